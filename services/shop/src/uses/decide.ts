import { isSameSize } from "@rimwise/domain";
import { bitAfterUpkeep } from "../bits/decide.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { InspectionPolicy } from "../bits/standing.ts";
import type { Hold } from "../bits/state-schema.ts";
import { holdCollet } from "../collets/decide.ts";
import type { ColletRecord } from "../collets/schema.ts";
import { notValid } from "../problems/problem.ts";
import { creation, type Decision } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import { useKind } from "./kind.ts";
import type { UseRecord } from "./schema.ts";
import { equivalentMetres } from "./wear.ts";

/** Who logs it. */
type Actor = Required<Pick<Hold, "by" | "isByStaff">>;

/**
 * Work that was done: it adds to what the bit has cut. Where the bit moved in the collet, both are held: the
 * collet that was named, or every one of the router that could have held this shank.
 */
export function logUse(
  record: UseRecord,
  bit: BitRecord,
  collets: readonly ColletRecord[],
  actor: Actor,
  at: string,
  policy: InspectionPolicy,
): Decision<UseRecord> {
  requireOneStory(record);
  const { used } = bit;
  const isSince = (moment = "") => record.doneAt >= moment;
  const grown = {
    uses: used.uses + 1,
    metres: used.metres + record.metres,
    minutes: used.minutes + record.minutes,
    metresSinceInspection: used.metresSinceInspection + (isSince(bit.inspectedAt) ? record.metres : 0),
    equivalentMetresSinceSharpening:
      used.equivalentMetresSinceSharpening +
      (isSince(bit.sharpenedAt) ? equivalentMetres(record, bit.toothMaterial) : 0),
  };
  const hold = record.outcomes.includes("came-loose") ? holdFor(record, actor, at) : undefined;
  const held = hold && bit.hold === undefined ? { hold } : {};
  return {
    record,
    changes: [
      creation(useKind, record),
      ...bitAfterUpkeep(bit, "used", { used: grown, ...held }, at, policy).changes,
      ...(hold ? heldCollets(record, bit, collets, hold, at) : []),
    ],
  };
}

function holdFor({ id, doneAt }: UseRecord, actor: Actor, at: string): Hold {
  const reason = `It moved in the collet on ${doneAt.slice(0, 10)}.`;
  return { since: at, reason, cause: "use", causeId: id, ...actor };
}

function heldCollets(
  { colletId, routerId }: UseRecord,
  { shankDiameterMm }: BitRecord,
  collets: readonly ColletRecord[],
  hold: Hold,
  at: string,
): Change[] {
  const suspects = collets.filter((collet) =>
    colletId === undefined
      ? collet.routerId === routerId && isSameSize(collet.diameterMm, shankDiameterMm)
      : collet.id === colletId,
  );
  return suspects
    .filter(({ condition }) => condition === "good" || condition === "worn")
    .flatMap((collet) => holdCollet(collet, hold, at).changes);
}

function requireOneStory({ outcomes }: UseRecord): void {
  if (!outcomes.includes("fine") || outcomes.length === 1) return;
  const accepted = "fine alone, or everything that went wrong";
  throw notValid([{ in: "body", pointer: "/outcomes", message: "It was fine, or it was not.", accepted }]);
}
