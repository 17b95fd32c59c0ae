import { type NextTrial, nextTrial, type Policy } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { bitIn, type KnownBit, type KnownRouter, trialsFor } from "../learned/learned.ts";
import { dialMark, rpm } from "../plans/rounding.ts";

const speed = (description: string) => Type.Union([Type.Integer(), Type.Null()], { description });

export const TrialProposalSchema = Type.Object(
  {
    bitId: Type.String({ description: "The bit." }),
    routerId: Type.String({ description: "The router." }),
    kind: Type.Enum(["try", "done", "not-possible"], {
      type: "string",
      description: "Whether there is a speed to try.",
    }),
    mark: Type.Union([Type.Number(), Type.String(), Type.Null()], {
      description: "The mark to set; null without a dial or without a speed to try.",
    }),
    rpm: speed("Nominal speed to try; null when there is none."),
    rpmHighest: speed("How fast it may actually run there; null when there is none."),
    step: speed("Which step of the climb this is; null when there is none."),
    stepsAtMost: speed("How many there are if it runs free every time; null when there is none."),
    fastestFreeRpm: speed("Fastest speed it has run free at in this router; null when it never did."),
    ceilingRpm: speed("What the climb stays under; null when it cannot start."),
    bindingLimit: Type.Union([Type.String(), Type.Null()], { description: "The limit behind that ceiling." }),
    reason: Type.Union([Type.String(), Type.Null()], {
      description: "Why the climb is over or cannot start; null while there is a speed to try.",
    }),
    howTo: Type.Array(Type.String(), {
      description: "What to do, in order. Nothing when there is no speed to try.",
    }),
  },
  { $id: "TrialProposal", description: "The next speed to try.", additionalProperties: false },
);

export type TrialProposal = Static<typeof TrialProposalSchema>;

const HOW_TO = [
  "Unplug the router. Look at the bit for chips, cracks and a tight bearing. Seat it in a clean collet and tighten.",
  "Turn it once by hand: it must touch nothing.",
  "Set the dial to this mark. Guard in place, nobody in line with the bit, no wood near it.",
  "Start, listen and feel for a few seconds, then stop. Any shaking: note `shook`, and do not go faster.",
  "Unplug, check that the bit has not moved in the collet, and enter what it did.",
];

const NOTHING = {
  mark: null,
  rpm: null,
  rpmHighest: null,
  step: null,
  stepsAtMost: null,
  fastestFreeRpm: null,
  ceilingRpm: null,
  bindingLimit: null,
  howTo: [],
};

const BECAUSE: Readonly<Record<string, string>> = {
  shook: "It shook one step faster. Stay at or under the fastest speed it ran free at.",
  "at-ceiling": "It has been tried up to the ceiling. Nothing faster is allowed.",
  "router-too-fast": "The slowest this router runs is over the ceiling of this bit. Do not run it here.",
  "no-collet-fits": "No collet of this router that is fit for use is made for this shank.",
  "table-only": "This bit is for a table only.",
};

/** The next speed to try a bit at in a router, by everything that is known of the two and the policy in force. */
export function proposedTrial(bit: KnownBit, router: KnownRouter, policy: Policy): TrialProposal {
  const ids = { bitId: bit.record.id, routerId: router.record.id };
  const outOfUse = bit.record.retirement ?? bit.record.hold;
  if (outOfUse !== undefined) {
    return {
      ...ids,
      kind: "not-possible",
      ...NOTHING,
      reason: `The bit is out of use: ${outOfUse.reason}`,
    };
  }
  const next = nextTrial({
    bit: bitIn(router.record.id, bit.record, bit.learned),
    router: router.usable,
    // One that can be put under a table is tried there: nobody holds a bit that may shake.
    mounting: router.record.mountings?.includes("table") === false ? "handheld" : "table",
    policy,
    trials: trialsFor(router, bit.learned, policy),
  });
  return { ...ids, kind: next.kind, ...NOTHING, ...detailsOf(next) };
}

function detailsOf(next: NextTrial) {
  switch (next.kind) {
    case "try":
      return {
        reason: null,
        mark: next.setting.mark === undefined ? null : dialMark(next.setting.mark),
        rpm: rpm(next.setting.rpm),
        rpmHighest: rpm(next.setting.rpmHighest),
        step: next.number,
        stepsAtMost: next.ofAtMost,
        ...ceilingOf(next.under),
        howTo: HOW_TO,
      };
    case "done":
      return {
        reason: BECAUSE[next.reason] ?? null,
        fastestFreeRpm: next.fastestFreeRpm === undefined ? null : rpm(next.fastestFreeRpm),
        ...ceilingOf(next.under),
      };
    case "not-possible":
      return { reason: BECAUSE[next.reason] ?? null };
  }
}

function ceilingOf({
  ceilingRpm,
  bindingLimit,
}: {
  readonly ceilingRpm: number;
  readonly bindingLimit: string;
}) {
  return { ceilingRpm: rpm(ceilingRpm), bindingLimit };
}
