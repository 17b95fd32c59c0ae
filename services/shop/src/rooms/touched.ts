import type { Touched } from "../approvals/lapse.ts";
import { subjectOf } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import { KINDS, type KindType } from "./kinds.ts";

type Answer = (change: Change) => Touched | undefined;

const nothing: Answer = () => undefined;
const everything: Answer = () => "all";
/** Nothing rests yet on what is new itself. */
const known =
  (field: "bitId" | "routerId" | "courseId"): Answer =>
  (change) =>
    change.action === "create" ? undefined : { field, id: subjectOf(change) };

/** What was learned of a bit or a router counts from the moment it is entered. Of one that is not read whole, nobody knows. */
const learned =
  (field: "bitId" | "routerId"): Answer =>
  (change) => {
    const id: unknown = "record" in change ? Reflect.get(change.record, field) : undefined;
    return typeof id === "string" ? { field, id } : "all";
  };

/** Which approvals a change of each kind of record may end. A kind that is not named here does not compile. */
const TOUCHED: { readonly [Type in KindType]: Answer } = {
  bit: known("bitId"),
  router: known("routerId"),
  course: known("courseId"),
  "shop-policy": everything,
  "speed-trial": learned("bitId"),
  "run-out-reading": learned("bitId"),
  use: learned("bitId"),
  "dial-reading": learned("routerId"),
  collet: learned("routerId"),
  place: nothing,
  photograph: nothing,
  loan: nothing,
  inspection: nothing,
  sharpening: nothing,
  import: nothing,
  "signing-key": nothing,
  plan: nothing,
  profile: nothing,
  job: nothing,
  reservation: nothing,
  person: nothing,
  key: nothing,
  enrolment: nothing,
  qualification: nothing,
  approval: nothing,
  lapse: nothing,
  grounds: nothing,
  check: nothing,
  checkpoint: nothing,
};

/** Which approvals may rest on what a change touches. */
export function touchedBy(change: Change): Touched | undefined {
  const kind = KINDS.find(({ type }) => type === change.kind.type);
  return kind === undefined ? "all" : TOUCHED[kind.type](change);
}
