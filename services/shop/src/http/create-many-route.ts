import Type, { type Static, type TObject } from "typebox";
import { notValid, Problem } from "../problems/problem.ts";
import type { Question } from "../store/query.ts";
import type { App } from "./app-type.ts";
import { ref } from "./reference.ts";
import { type Asked, askedOf, type Component, type Doors, type RouteDefinition, schemaOf } from "./routes.ts";
import { stampOf } from "./write.ts";
import type { Decided } from "./write-routes.ts";

/** What is decided about one of many. */
export type CreatedEach<Shown> = Decided<Shown> & {
  /** Kept in place of the whole answer when this one holds a secret that is shown once. */
  readonly onRepeat?: Problem;
};

/** The body of a request that creates many at once. */
export function manySchema<Item extends Component>($id: string, item: Item, most: number) {
  const data = Type.Array(ref(item), {
    minItems: 1,
    maxItems: most,
    description: `Up to ${most}, all or none.`,
  });
  return Type.Object(
    { data },
    { $id, description: "Many to create in one request.", additionalProperties: false },
  );
}

/** What answers it. */
export function manyCreatedSchema<Item extends Component>($id: string, item: Item) {
  const data = Type.Array(ref(item), { description: "What was created, in the order of the request." });
  return Type.Object({ data }, { $id, description: "All that was created.", additionalProperties: false });
}

/**
 * Registers the creation of many records in one request: all in one transaction or none, once for each Idempotency-Key. A fault of
 * one names its place in the list. `decide` is asked for one after the other and sees what was decided about those before.
 */
export function createManyRoute<
  Path extends string,
  Item,
  Shown,
  Body extends TObject<{ data: Type.TArray<Type.TUnsafe<Item>> }> & Component,
  Answer extends TObject<{ data: Type.TArray<Type.TUnsafe<Shown>> }> & Component,
>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & {
    readonly body: Body;
    readonly answer: Answer;
    readonly bodyLimit?: number;
  },
  decide: (item: Item, asked: Asked<Path>, before: readonly Shown[]) => Question<CreatedEach<Shown>>,
): void {
  const { path, scope, body, answer, bodyLimit } = definition;

  function* decideAll(items: readonly Item[], asked: Asked<Path>): Question<CreatedEach<Shown>[]> {
    const decided: CreatedEach<Shown>[] = [];
    const before: Shown[] = [];
    for (const [index, item] of items.entries()) {
      const each = yield* inItem(index, decide(item, asked, before));
      decided.push(each);
      before.push(each.answer);
    }
    return decided;
  }

  app.post(
    path,
    {
      config: { scope, operation: "create" },
      ...(bodyLimit !== undefined && { bodyLimit }),
      schema: schemaOf(definition, { body: ref(body), response: { 201: ref(answer) } }),
    },
    (request, reply) =>
      doors.answerOnce(request, reply, async () => {
        const stamp = stampOf(request, doors.now());
        const asked = askedOf<Path, undefined, Record<never, never>>(request, stamp.at);
        const { data } = askedOf<Path, Static<Body>, undefined>(request, stamp.at).body;
        const decided = await doors.answer(decideAll(data, asked));
        const onRepeat = decided.find((each) => each.onRepeat !== undefined)?.onRepeat;
        return {
          stamp,
          status: 201,
          changes: decided.flatMap(({ changes }) => changes),
          expects: decided.flatMap(({ expects = [] }) => expects),
          headers: { "Cache-Control": "no-store" },
          body: { data: decided.map((each) => each.answer) },
          ...(onRepeat && { onRepeat }),
        };
      }),
  );
}

/** What one item comes to; what is wrong with it says where in the list it is. */
function* inItem<Answer>(index: number, question: Question<Answer>): Question<Answer> {
  try {
    return yield* question;
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    if (error.errors.length === 0) {
      throw new Problem(error.code, `Number ${index + 1} of the list: ${error.message}`);
    }
    throw notValid(error.errors.map((fault) => ({ ...fault, pointer: `/data/${index}${fault.pointer}` })));
  }
}
