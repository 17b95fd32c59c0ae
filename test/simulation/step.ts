import fc from "fast-check";
import type { Sent } from "./acts/act.ts";
import { type Act, anyAct, prepareOf } from "./acts/acts.ts";
import { WRITE_FAULTS, type WriteFault } from "./faulty-store.ts";
import { copyOf, type Model } from "./model.ts";
import { withNewerSchema } from "./newer-schema.ts";
import { OLDER_LEVELS, takesUpOlderSchema } from "./older-schema.ts";
import { type Answer, type World, withFailingStatement } from "./world.ts";

const SECOND_MS = 1000;
const HOUR_MS = 3600 * SECOND_MS;
const DAY_MS = 24 * HOUR_MS;

/** What happens to the service during a step. */
type Fault = WriteFault | (typeof OTHER_FAULTS)[number];
const OTHER_FAULTS = [
  "statement-fails",
  "answers-lost",
  "answers-lost",
  "restart",
  "older-schema",
  "newer-schema",
] as const;

/** Some people act at once, after some time has passed, while something may go wrong. */
export type Step = {
  readonly acts: readonly Act[];
  readonly passMs: number;
  readonly fault: Fault | undefined;
  /** Which level an older schema is at. */
  readonly level: string;
};

export const anyStep: fc.Arbitrary<Step> = fc.record({
  acts: fc.array(anyAct, { minLength: 1, maxLength: 3 }),
  passMs: fc.oneof(
    { weight: 6, arbitrary: fc.integer({ min: SECOND_MS, max: HOUR_MS }) },
    { weight: 3, arbitrary: fc.integer({ min: DAY_MS, max: 30 * DAY_MS }) },
    { weight: 1, arbitrary: fc.integer({ min: -DAY_MS, max: -SECOND_MS }) },
  ),
  fault: fc.oneof(
    { weight: 8, arbitrary: fc.constant(undefined) },
    {
      weight: 5,
      arbitrary: fc.constantFrom<Fault>(...WRITE_FAULTS, ...OTHER_FAULTS),
    },
  ),
  level: fc.constantFrom(...OLDER_LEVELS),
});

/** Statuses that a fault may be answered with: nothing was changed, or nobody can say. */
const FAILED_WITH: Readonly<Record<Fault, readonly number[]>> = {
  "crash-before-commit": [500],
  "crash-after-commit": [500],
  "disk-full": [507],
  "file-locked": [503],
  "statement-fails": [500],
  "answers-lost": [],
  restart: [],
  "older-schema": [],
  "newer-schema": [],
};

/** Counts what happened, by its name. */
export type Tally = (what: string) => void;

type Outcome = { readonly sent: Sent; readonly answer: Answer };

/**
 * Lets a step happen and returns the model after it. Throws if the answers are not those of any order in which the acts can have
 * been done.
 */
export async function happen(
  world: World,
  model: Model,
  step: Step,
  number: number,
  tally: Tally,
): Promise<Model> {
  const { fault, passMs, acts, level } = step;
  model.nowMs += passMs;
  world.setClock(model.nowMs);
  if (fault === "restart") await world.restart();
  if (fault === "older-schema") await world.restart(() => takesUpOlderSchema(world.database, level));
  const sent = acts.flatMap((act) => prepareOf(act)(model, world.scene) ?? []);
  const once = (each: Sent, index: number) => ask(world, each, `${number}-${index}`);
  const all = () => Promise.all(sent.map(once));
  world.arm(WRITE_FAULTS.find((each) => each === fault));
  const first = await during(fault, world, all);
  world.arm(undefined);
  if (fault === "crash-before-commit" || fault === "crash-after-commit") await world.restart();
  const outcomes: Outcome[] = [];
  for (const [index, each] of sent.entries()) {
    const answer = first[index];
    if (answer === undefined) throw new Error("a request has no answer");
    outcomes.push({ sent: each, answer: await settled(answer, () => once(each, index), fault) });
  }
  tally(`with ${fault ?? "no fault"}`);
  for (const { sent: each, answer } of outcomes) tally(`${each.what} ${answer.code}`);
  return ordered(model, outcomes);
}

/** Lets something be done while a fault is there. */
function during<Result>(fault: Fault | undefined, world: World, act: () => Promise<Result>): Promise<Result> {
  if (fault === "statement-fails") return withFailingStatement(world, act);
  if (fault === "newer-schema") return withNewerSchema(world, act);
  return act();
}

/** The answer that counts: of a request that failed, or whose answer was lost, the one to the same request again. */
async function settled(
  answer: Answer,
  again: () => Promise<Answer>,
  fault: Fault | undefined,
): Promise<Answer> {
  if (answer.status >= 500) {
    const expected = fault === undefined ? [] : FAILED_WITH[fault];
    if (!expected.includes(answer.status))
      throw new Error(`${answer.status} ${answer.code} while ${fault ?? "nothing"} went wrong`);
    return again();
  }
  if (fault !== "answers-lost" || answer.code !== "done") return answer;
  const replayed = await again();
  if (!replayed.isReplayed || JSON.stringify(replayed.body) !== JSON.stringify(answer.body))
    throw new Error(`asked again, the answer was ${JSON.stringify(replayed)}, not ${JSON.stringify(answer)}`);
  return answer;
}

function ask(
  world: World,
  { who, method, url, body, headers }: Sent,
  idempotencyKey: string,
): Promise<Answer> {
  return world.ask({
    ...{ method, url, body, key: world.scene.keys[who] },
    headers: { ...headers, "idempotency-key": idempotencyKey },
  });
}

/** The model after the acts in the first order that explains every answer. */
function ordered(model: Model, outcomes: readonly Outcome[]): Model {
  const wrong: string[] = [];
  for (const order of ordersOf(outcomes)) {
    const after = copyOf(model);
    const fault = order.map((outcome) => take(after, outcome)).find((each) => each !== undefined);
    if (fault === undefined) return after;
    wrong.push(fault);
  }
  throw new Error(`no order of the acts explains the answers: ${[...new Set(wrong)].join("; ")}`);
}

function take(model: Model, { sent, answer }: Outcome): string | undefined {
  const { who, method, url } = sent;
  const mayCome = sent.mayCome(model);
  if (!mayCome.includes(answer.code))
    return `${who} ${method} ${url}: ${answer.code} ${JSON.stringify(answer.body)}, not ${mayCome.join(" or ")}`;
  if (answer.code === "done") sent.apply(model, answer.body);
  return undefined;
}

function ordersOf<Value>(values: readonly Value[]): Value[][] {
  if (values.length === 0) return [[]];
  return values.flatMap((value, index) =>
    ordersOf(values.toSpliced(index, 1)).map((rest) => [value, ...rest]),
  );
}
