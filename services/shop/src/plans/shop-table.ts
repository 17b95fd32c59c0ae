import {
  DomainError,
  describeFault,
  describeFinding,
  makePlan,
  type PlanInput,
  showIn,
  usualCut,
} from "@rimwise/domain";
import { bareBit } from "../bits/bare.ts";
import type { Doors } from "../http/routes.ts";
import type { Turns } from "../http/turns.ts";
import { bitIn, knownBit, knownRouter } from "../learned/learned.ts";
import { policyInForce } from "../policy/in-force.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import { shopLayer } from "../shop-policy/reads.ts";
import { type Askable, asked, type Question } from "../store/query.ts";
import { woods } from "../woods/reads.ts";
import { MOST_IN_TABLE, type ShopTable, type ShopTableRequest } from "./batch-schema.ts";
import { warnings } from "./gather.ts";
import { dialMark, rpm } from "./rounding.ts";

/** Ceiling, mark and verdict of every bit in every router in every wood, each bit at the cut it is made for. */
export async function shopTable(
  request: ShopTableRequest,
  { answer, now }: Pick<Doors, "answer" | "now">,
  turns: Turns,
): Promise<ShopTable> {
  const { mounting, policy = {} } = request;
  const named = await answer(namedIn(request, now().toISOString()));
  const inForce = policyInForce(named.layer, policy);
  const rows: ShopTable["rows"] = [];
  for (const bitFound of named.bits) {
    const { record, learned } = bitFound;
    const cut = usualCut(bareBit(record));
    const outOfUse = record.retirement ?? record.hold;
    for (const routerFound of named.routers) {
      const router = routerFound.usable;
      const bit = bitIn(routerFound.record.id, record, learned);
      for (const wood of named.woods) {
        await turns();
        const known = warnings({}, bitFound, routerFound, wood.id, inForce);
        const figures =
          outOfUse === undefined
            ? figuresOf({ bit, router, mounting, wood, cut, policy: inForce, ...known })
            : refused(outOfUse.reason);
        rows.push({ bitId: record.id, routerId: routerFound.record.id, woodId: wood.id, ...figures });
      }
    }
  }
  return { rows };
}

/** What a table is made of. Throws a problem that names everything that does not exist. */
function* namedIn({ bitIds, routerIds, woodIds, policy: given = {} }: ShopTableRequest, at: string) {
  requireFewEnough(bitIds.length * routerIds.length * woodIds.length);
  const faults: FieldFault[] = [];
  const layer = yield* shopLayer();
  const policy = policyInForce(layer, given);
  const bits = yield* found(bitIds, "bitIds", (id) => knownBit(id, at, policy), faults);
  const routers = yield* found(routerIds, "routerIds", (id) => knownRouter(id, at, policy), faults);
  const ofWoods = yield* found(woodIds, "woodIds", woods.find, faults);
  if (faults.length > 0) throw notValid(faults);
  return { bits, routers, woods: ofWoods, layer };
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

function refused(reason: string): Figures {
  return { verdict: "do-not-run", reason, ceilingRpm: null, rpm: null, mark: null, passes: 0 };
}

function planFigures(input: PlanInput): Figures {
  const { verdict, speed, passes, findings } = makePlan(input);
  const [weightiest] = findings;
  const { setting } = speed;
  return {
    verdict,
    reason: verdict !== "run" && weightiest ? describeFinding(weightiest, showIn("both")) : null,
    ceilingRpm: rpm(speed.ceilingRpm),
    rpm: setting ? rpm(setting.rpm) : null,
    mark: setting?.mark === undefined ? null : dialMark(setting.mark),
    passes: passes.length,
  };
}

/** The records with these ids, in order; each that does not exist becomes a fault. */
function* found<Found>(
  ids: readonly string[],
  name: string,
  find: (id: string) => Askable<Found | undefined>,
  faults: FieldFault[],
): Question<Found[]> {
  const records: Found[] = [];
  for (const [index, id] of ids.entries()) {
    const record = yield* asked(find(id));
    if (record !== undefined) records.push(record);
    else {
      const message = "There is no such record.";
      faults.push({ in: "body", pointer: `/${name}/${index}`, message, accepted: "an id that is kept here" });
    }
  }
  return records;
}

function requireFewEnough(count: number): void {
  if (count <= MOST_IN_TABLE) return;
  const accepted = `bits × routers × woods of at most ${MOST_IN_TABLE}`;
  throw notValid([{ in: "body", pointer: "/bitIds", message: `That is ${count} combinations.`, accepted }]);
}
