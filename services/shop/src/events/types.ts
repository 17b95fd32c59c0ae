import { defineCodes } from "../http/code-list.ts";

/** What becomes of most records. */
const WRITTEN = { created: "was entered" } as const;
const CHANGED = { ...WRITTEN, changed: "was changed" } as const;
const REMOVED = { ...CHANGED, removed: "was removed" } as const;

/** What can happen to each kind of record, as the rest of a sentence. */
export const HAPPENINGS = {
  bit: {
    ...REMOVED,
    used: "was used",
    inspected: "was inspected",
    sharpened: "was sharpened",
    "sent-to-sharpening": "was sent to be sharpened",
    lent: "was lent",
    returned: "came back",
    held: "was held",
    released: "was released",
    retired: "was retired",
    seen: "was seen in a stock-take",
    missed: "was not seen in a stock-take",
    rescheduled: "has another date for its next inspection, by a change of the policy",
  },
  place: REMOVED,
  photograph: { ...WRITTEN, removed: "was removed" },
  loan: { ...WRITTEN, returned: "ended" },
  inspection: WRITTEN,
  sharpening: WRITTEN,
  router: REMOVED,
  collet: { ...CHANGED, held: "was held" },
  "dial-reading": WRITTEN,
  "run-out-reading": WRITTEN,
  "speed-trial": { ...WRITTEN, "set-aside": "was set aside" },
  use: WRITTEN,
  import: { ...WRITTEN, finished: "came to its end" },
  plan: { ...WRITTEN, corrected: "was corrected by a test piece" },
  profile: { ...CHANGED, made: "was made, and how is kept" },
  job: {
    ...CHANGED,
    "made-ready": "was settled, and its bits are kept for its days",
    reopened: "became a draft again",
    "set-up-made": "has one more set-up made",
    ended: "ended as done or dropped",
  },
  reservation: { ...WRITTEN, released: "ended" },
  "shop-policy": CHANGED,
  person: { ...CHANGED, erased: "was erased; the record stays without saying who it is" },
  key: { ...WRITTEN, rotated: "has a new secret", revoked: "was revoked" },
  course: CHANGED,
  enrolment: { ...WRITTEN, ended: "ended" },
  qualification: {
    ...WRITTEN,
    withdrawn: "was withdrawn",
    "notes-erased": "lost its notes, with the person's",
  },
  approval: {
    ...WRITTEN,
    issued: "was issued",
    withdrawn: "was withdrawn",
    replaced: "was replaced by another",
    lapsed: "lapsed, because something it rests on changed",
    shortened: "ends sooner, with its course",
    "judged-again": "was judged again by a newer version of the computation, with the same result",
  },
  lapse: WRITTEN,
  grounds: WRITTEN,
  check: WRITTEN,
  checkpoint: WRITTEN,
  "signing-key": {
    ...WRITTEN,
    retired: "was retired: it signs nothing any more",
    compromised: "is in other hands: nothing that it signed counts any more",
    lost: "was lost: what it signed cannot be checked any more",
    resealed: "is sealed with another sealing key",
  },
  computation: { renewed: "has a newer version" },
} as const;

/** What happened, with what that means. */
export const EventType = defineCodes({ name: "EventType", title: "What happened", meanings: meaningsOf() });

function meaningsOf(): Readonly<Record<string, string>> {
  const entries = Object.entries(HAPPENINGS).flatMap(([kind, happenings]) =>
    Object.entries(happenings).map(([happening, rest]) => [
      `${kind}.${happening}`,
      `The ${kind.replaceAll("-", " ")} ${rest}.`,
    ]),
  );
  return Object.fromEntries(entries);
}
