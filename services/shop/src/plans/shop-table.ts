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
import { type FieldFault, notValid } from "../problems/problem.ts";
import { MOST_IN_TABLE, type ShopTable, type ShopTableRequest } from "./batch-schema.ts";
import { bareBit, bareRouter, type Sources } from "./gather.ts";
import { dialMark, rpm } from "./present.ts";

/** Ceiling, mark and verdict of every bit in every router in every wood, each bit at the cut it is made for. */
export async function shopTable(request: ShopTableRequest, sources: Sources): Promise<ShopTable> {
  const { bitIds, routerIds, woodIds, mounting, policy = {} } = request;
  requireFewEnough(bitIds.length * routerIds.length * woodIds.length);
  const faults: FieldFault[] = [];
  const bits = await found(bitIds, "bitIds", sources.bits.find, faults);
  const routers = await found(routerIds, "routerIds", sources.routers.find, faults);
  const woods = await found(woodIds, "woodIds", async (id) => sources.woods.find(id), faults);
  if (faults.length > 0) throw notValid(faults);
  const inForce = strictestPolicy(policy);
  const rows: ShopTable["rows"] = [];
  for (const keptBit of bits) {
    const bit = bareBit(keptBit);
    const cut = usualCut(bit);
    for (const keptRouter of routers) {
      // A table may take a second: other requests get a turn in between.
      await nextTurn();
      const router = bareRouter(keptRouter);
      for (const wood of woods) {
        const figures = figuresOf({ bit, router, mounting, wood, cut, policy: inForce });
        rows.push({ bitId: keptBit.id, routerId: keptRouter.id, woodId: wood.id, ...figures });
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
    const because = describeFault(fault).message;
    return { verdict: "do-not-run", because, ceilingRpm: null, rpm: null, dialMark: null, passes: 0 };
  }
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
