import type { Static, TArray, TObject, TUnsafe } from "typebox";
import { fieldFaults } from "../problems/from-ajv.ts";
import { type FieldFault, MOST_FAULTS, notValid, Problem, pathOf, problemBody } from "../problems/problem.ts";
import type { Question } from "../store/query.ts";
import type { App } from "./app-type.ts";
import { BatchQuery, outlineOf } from "./many-schema.ts";
import { ref } from "./reference.ts";
import { type Asked, askedOf, type Component, type Doors, type RouteDefinition, schemaOf } from "./routes.ts";
import type { Validator } from "./validation.ts";
import { stampOf } from "./write.ts";
import type { Decided } from "./write-routes.ts";

/** What is decided about one of many. */
export type CreatedEach<Shown> = Decided<Shown> & {
  /** Kept in place of the whole answer when this one holds a secret that is shown once. */
  readonly onRepeat?: Problem;
};

/** What was decided about the rows before; undefined for one that was refused. */
export type RowsBefore<Shown> = readonly (Shown | undefined)[];

type Row<Shown> = { readonly taken: CreatedEach<Shown> } | { readonly refused: Problem };

/**
 * Registers the creation of many records in one request and one transaction, once for each Idempotency-Key: all of them or none,
 * or row by row, where one that cannot be taken refuses itself alone. A fault of one names its place in the list. `decide` is
 * asked for one after the other and sees what was decided about those before.
 */
export function createManyRoute<
  Path extends string,
  Item,
  Shown,
  Body extends TObject<{ data: TArray<TUnsafe<Item>> }> & Component,
  Answer extends Component & { readonly properties: { readonly data: TArray<TUnsafe<Shown>> } },
>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & {
    readonly body: Body;
    readonly answer: Answer;
    readonly bodyLimit?: number;
  },
  decide: (item: Item, asked: Asked<Path>, before: RowsBefore<Shown>) => Question<CreatedEach<Shown>>,
): void {
  const { path, scope, body, answer, bodyLimit } = definition;
  const faultsInAll = doors.validatorOf(ref(body));
  const faultsInRow = doors.validatorOf(body.properties.data.items);

  function* decideRow(item: Item, asked: Asked<Path>, before: RowsBefore<Shown>): Question<Row<Shown>> {
    try {
      return { taken: yield* decide(item, asked, before) };
    } catch (error) {
      if (error instanceof Problem) return { refused: error };
      throw error;
    }
  }

  function* decideAll(
    items: readonly Item[],
    asked: Asked<Path>,
    isEachAlone: boolean,
  ): Question<Row<Shown>[]> {
    const rows: Row<Shown>[] = [];
    const before: (Shown | undefined)[] = [];
    for (const [index, item] of items.entries()) {
      const fault = isEachAlone ? notOfSchema(faultsInRow(item)) : undefined;
      const row = fault === undefined ? yield* decideRow(item, asked, before) : { refused: fault };
      if ("refused" in row && !isEachAlone) throw inRow(index, row.refused);
      rows.push(row);
      before.push("taken" in row ? row.taken.answer : undefined);
    }
    if (rows.every((row) => "refused" in row)) throw noneTaken(rows);
    return rows;
  }

  app.post(
    path,
    {
      config: { scope, operation: "act", bodyOutline: outlineOf(body) },
      ...(bodyLimit !== undefined && { bodyLimit }),
      schema: schemaOf(definition, {
        querystring: BatchQuery,
        body: ref(body),
        response: { 201: ref(answer) },
      }),
    },
    (request, reply) =>
      doors.answerOnce(request, reply, async () => {
        const stamp = stampOf(request, doors.now());
        const { data } = askedOf<Path, Static<Body>, undefined>(request, stamp.at).body;
        const asked = askedOf<Path, undefined, Static<typeof BatchQuery>>(request, stamp.at);
        const isEachAlone = asked.query.mode === "row-by-row";
        const fault = isEachAlone ? undefined : notOfSchema(faultsInAll(request.body));
        if (fault !== undefined) throw fault;
        const rows = await doors.answer(decideAll(data, asked, isEachAlone));
        const taken = rows.flatMap((row) => ("taken" in row ? [row.taken] : []));
        const refused = rows.flatMap((row, index) =>
          "refused" in row
            ? [{ row: index + 1, problem: problemBody(row.refused, request.id, pathOf(request)) }]
            : [],
        );
        const onRepeat = taken.find((each) => each.onRepeat !== undefined)?.onRepeat;
        return {
          stamp,
          status: 201,
          changes: taken.flatMap(({ changes }) => changes),
          expects: taken.flatMap(({ expects = [] }) => expects),
          headers: { "Cache-Control": "no-store" },
          body: { data: taken.map((each) => each.answer), refused },
          ...(onRepeat && { onRepeat }),
        };
      }),
  );
}

function notOfSchema(errors: ReturnType<Validator>): Problem | undefined {
  return errors && notValid(fieldFaults(errors, "body"));
}

/** A problem of one row as one of the whole request: it says where in the list. */
function inRow(index: number, problem: Problem): Problem {
  if (problem.errors.length > 0) return notValid(faultsAt(index, problem));
  return new Problem(problem.code, `Number ${index + 1} of the list: ${problem.message}`);
}

function noneTaken(rows: readonly Row<unknown>[]): Problem {
  const faults = rows.flatMap((row, index) => {
    if (!("refused" in row)) return [];
    const { errors, message } = row.refused;
    if (errors.length > 0) return faultsAt(index, row.refused);
    return [{ in: "body" as const, pointer: `/data/${index}`, message, accepted: "what its problem says" }];
  });
  return notValid(faults.slice(0, MOST_FAULTS));
}

function faultsAt(index: number, { errors }: Problem): FieldFault[] {
  return errors.map((fault) => ({ ...fault, pointer: `/data/${index}${fault.pointer}` }));
}
