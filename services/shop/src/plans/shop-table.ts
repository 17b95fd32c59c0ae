import { setImmediate as nextTurn } from "node:timers/promises";
import {
  DomainError,
  describeFault,
  describeFinding,
  makePlan,
  type PlanInput,
  showIn,
  strictestPolicy,
  usualCut,
} from "@rimwise/domain";
import { bareBit } from "../bits/bare.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import { MOST_IN_TABLE, type ShopTable, type ShopTableRequest } from "./batch-schema.ts";
import { loadBit, loadRouter, type Sources, warnings } from "./gather.ts";
import { bitIn } from "./learned.ts";
import { dialMark, rpm } from "./present.ts";

/** Ceiling, mark and verdict of every bit in every router in every wood, each bit at the cut it is made for. */
export async function shopTable(request: ShopTableRequest, sources: Sources): Promise<ShopTable> {
  const { bitIds, routerIds, woodIds, mounting, policy = {} } = request;
  requireFewEnough(bitIds.length * routerIds.length * woodIds.length);
  const faults: FieldFault[] = [];
  const bits = await found(bitIds, "bitIds", (id) => loadBit(id, sources), faults);
  const routers = await found(routerIds, "routerIds", (id) => loadRouter(id, sources), faults);
  const woods = await found(woodIds, "woodIds", async (id) => sources.woods.find(id), faults);
  if (faults.length > 0) throw notValid(faults);
  const inForce = strictestPolicy(await sources.shopPolicy(), policy);
  const rows: ShopTable["rows"] = [];
  for (const keptBit of bits) {
    const { record, learned } = keptBit;
    const cut = usualCut(bareBit(record));
    const outOfUse = record.retirement ?? record.hold;
    for (const keptRouter of routers) {
      // A table may take a second: other requests get a turn in between.
      await nextTurn();
      const router = keptRouter.usable;
      const bit = bitIn(keptRouter.record.id, record, learned);
      for (const wood of woods) {
        const known = warnings({}, keptBit, keptRouter, wood.id);
        const figures =
          outOfUse === undefined
            ? figuresOf({ bit, router, mounting, wood, cut, policy: inForce, ...known })
            : refused(outOfUse.because);
        rows.push({ bitId: record.id, routerId: keptRouter.record.id, woodId: wood.id, ...figures });
      }
    }
  }
  return { rows };
}

type Figures = Omit<ShopTable["rows"][number], "bitId" | "routerId" | "woodId">;

/** One row's figures. What cannot be planned at all, such as a shank no collet takes, is a row that says why. */
function figuresOf(input: PlanInput): Figures {
  try {
    return planFigures(input);
  } catch (error) {
    const [fault] = error instanceof DomainError ? error.faults : [];
    if (fault === undefined) throw error;
    return refused(describeFault(fault).message);
  }
}

function refused(because: string): Figures {
  return { verdict: "do-not-run", because, ceilingRpm: null, rpm: null, dialMark: null, passes: 0 };
}

function planFigures(input: PlanInput): Figures {
  const { verdict, speed, passes, findings } = makePlan(input);
  const [weightiest] = findings;
  const { setting } = speed;
  return {
    verdict,
    because: verdict !== "run" && weightiest ? describeFinding(weightiest, showIn("both")) : null,
    ceilingRpm: rpm(speed.ceilingRpm),
    rpm: setting ? rpm(setting.rpm) : null,
    dialMark: setting?.mark === undefined ? null : dialMark(setting.mark),
    passes: passes.length,
  };
}

/** The records with these ids, in order; each that does not exist becomes a fault. */
async function found<Found>(
  ids: readonly string[],
  name: string,
  find: (id: string) => Promise<Found | undefined>,
  faults: FieldFault[],
): Promise<Found[]> {
  const records = await Promise.all(ids.map(find));
  return records.flatMap((record, index) => {
    if (record !== undefined) return [record];
    const pointer = `/${name}/${index}`;
    faults.push({
      in: "body",
      pointer,
      message: "There is no such record.",
      accepted: "an id that is kept here",
    });
    return [];
  });
}

function requireFewEnough(count: number): void {
  if (count <= MOST_IN_TABLE) return;
  const accepted = `bits × routers × woods of at most ${MOST_IN_TABLE}`;
  throw notValid([{ in: "body", pointer: "/bitIds", message: `That is ${count} combinations.`, accepted }]);
}
