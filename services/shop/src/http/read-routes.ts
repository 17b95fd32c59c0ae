import type { FastifyRequest } from "fastify";
import Type, { type Static, type TObject, type TProperties, type TSchema } from "typebox";
import { viewerOf, visibleTo } from "../access/caller.ts";
import { Problem } from "../problems/problem.ts";
import type { Kind, RecordOf } from "../store/kind.ts";
import { type Askable, asked as answerOf, type Question } from "../store/query.ts";
import type { RecordQueries, RecordView } from "../store/record-queries.ts";
import type { App } from "./app-type.ts";
import { etagOf } from "./conditional.ts";
import { IDENTITY_FILTERS, identityOf } from "./identity-filters.ts";
import { NAMED_FILTERS, namedAsk, placeAfter, startAt } from "./named-lists.ts";
import { PageQuery, sendPage } from "./paging.ts";
import { ref } from "./reference.ts";
import {
  type Asked,
  askedOf,
  type Component,
  type Doors,
  type QueryOf,
  type RouteDefinition,
  schemaOf,
} from "./routes.ts";

/** A query parameter that narrows a list to what names a record. */
export function idFilter(description: string) {
  return Type.Optional(Type.String({ maxLength: 100, description }));
}

/** A query parameter that narrows a list to one value of a field; a field with few values takes those alone. */
function fieldFilter({ schema }: Kind, field: string, said: string | TSchema) {
  if (typeof said !== "string") return said;
  const description = said;
  const choices: unknown = Object(schema.properties[field]).enum;
  if (!Array.isArray(choices)) return idFilter(description);
  return Type.Optional(Type.Enum(choices.map(String), { type: "string", description }));
}

/** The filters of a list as they came. */
type FiltersOf<Filters extends TProperties> = Static<TObject<Filters>>;

/** Where a page begins and how many rows it takes. */
export type PageAsked = { readonly afterId: string; readonly most: number };

/** Registers a list by pages. */
export function listRoute<
  Path extends string,
  Row extends { readonly id: string },
  Filters extends TProperties,
>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & {
    readonly page: Component & { readonly properties: { readonly data: unknown } };
    /** Query parameters that narrow the list. */
    readonly filters?: Filters;
  },
  read: (page: PageAsked, asked: Asked<Path, undefined, FiltersOf<Filters>>) => Askable<Row[]>,
  /** What the next page goes on from. Default: the row's id. */
  placeOf: (row: Row, query: FiltersOf<Filters>) => string = ({ id }) => id,
  /** Whose view of it is sent again as long as nothing was committed. Absent for what depends on more than records. */
  viewer?: (request: FastifyRequest) => string,
): void {
  const { path, scope, page, filters } = definition;
  const querystring = Type.Object({ ...PageQuery.properties, ...filters }, { additionalProperties: false });
  app.get(
    path,
    {
      config: { scope, operation: "list" },
      schema: schemaOf(definition, { querystring, response: { 200: ref(page) } }),
    },
    (request, reply) => {
      const pageOf = () => {
        const asked = askedOf<Path, undefined, Static<typeof PageQuery> & FiltersOf<Filters>>(
          request,
          doors.now().toISOString(),
        );
        return sendPage(
          request,
          reply,
          asked.query,
          (afterId, most) => doors.answer(answerOf(read({ afterId, most }, asked))),
          (row) => placeOf(row, asked.query),
        );
      };
      return viewer === undefined ? pageOf() : doors.answerRead(request, reply, viewer(request), pageOf);
    },
  );
}

/**
 * Registers a list of a kind's records as far as the caller may see them. Its filters are fields of the records or columns of their
 * table, each with its description; whatever is asked for is part of the one query that cuts the page. Records with a name are
 * also found and sorted by it.
 */
export function listRecordsRoute<Path extends string, K extends Kind>(
  app: App,
  doors: Doors,
  definition: RecordsList<Path, K>,
): void {
  listShownRoute(
    app,
    doors,
    definition,
    (record) => record,
    (request) => viewerOf(request, definition.of),
  );
}

type RecordsList<Path extends string, K extends Kind> = RouteDefinition<Path> & {
  readonly of: RecordQueries<K>;
  readonly page: Component & { readonly properties: { readonly data: unknown } };
  /** What each filter finds, or its whole schema if the record has no such field. */
  readonly filters?: Readonly<Record<string, string | TSchema>>;
};

/** The same for records that are not shown as they are kept. */
export function listShownRoute<
  Path extends string,
  K extends Kind,
  Row extends { readonly id: string; readonly name?: string },
>(
  app: App,
  doors: Doors,
  definition: RecordsList<Path, K>,
  show: (record: RecordOf<K>, asked: { readonly at: string }) => Askable<Row>,
  viewer?: (request: FastifyRequest) => string,
): void {
  const { of, filters, ...rest } = definition;
  const described = Object.entries(filters ?? {});
  const { properties } = of.kind.schema;
  const identity = "externalId" in properties ? IDENTITY_FILTERS : {};
  const named = "name" in properties ? NAMED_FILTERS : {};
  listRoute(
    app,
    doors,
    {
      ...rest,
      filters: {
        ...Object.fromEntries(described.map(([name, text]) => [name, fieldFilter(of.kind, name, text)])),
        ...identity,
        ...named,
      },
    },
    function* ({ afterId, most }, { query, request, at }) {
      const asked = described.map(([name]) => [name, Reflect.get(query, name)]);
      const where = { ...Object.fromEntries(asked), ...identityOf(query) };
      const view = visibleTo(request, of);
      const rows: Row[] = [];
      for (const record of yield* view.found(startAt(afterId), most, { where, ...namedAsk(query) }))
        rows.push(yield* answerOf(show(record, { at })));
      return rows;
    },
    (row, query) => placeAfter(row, namedAsk(query).order),
    viewer,
  );
}

/** Registers the reading of one record by its id, the last parameter of the path, as far as the caller may see it. */
export function readRoute<Path extends string, K extends Kind>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & { readonly of: RecordQueries<K> },
  find?: (id: string, asked: Asked<Path>) => Question<RecordOf<K> | undefined>,
): void {
  const { of } = definition;
  const asKept = { ...definition, answer: of.kind.schema };
  if (find === undefined)
    readShownRoute(app, doors, asKept, findVisible(of), (request) => viewerOf(request, of));
  else readShownRoute(app, doors, asKept, find);
}

/** How a route finds a record by id: as far as the caller may see it. */
export function findVisible<K extends Kind>(of: RecordQueries<K>) {
  return (id: string, { request }: { readonly request: FastifyRequest }): ReturnType<RecordView<K>["find"]> =>
    visibleTo(request, of).find(id);
}

/** The same for records that are not shown as they are kept. */
export function readShownRoute<
  Path extends string,
  Shown extends Component,
  Query extends TObject<TProperties> | undefined = undefined,
>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & {
    readonly of: { readonly kind: Kind };
    readonly answer: Shown;
    readonly query?: Query;
  },
  find: (
    id: string,
    asked: Asked<Path, undefined, QueryOf<Query>>,
  ) => Question<(Static<Shown> & { readonly version: number }) | undefined>,
  viewer?: (request: FastifyRequest) => string,
): void {
  const { path, scope, of, answer, query } = definition;
  app.get(
    path,
    {
      config: { scope, operation: "read" },
      schema: schemaOf(definition, {
        ...(query && { querystring: query }),
        response: { 200: ref(answer) },
      }),
    },
    (request, reply) => {
      const rowOf = async () => {
        const asked = askedOf<Path, undefined, QueryOf<Query>>(request, doors.now().toISOString());
        const id = lastParameter(asked.params);
        const row = requireFound(of.kind, id, await doors.answer(find(id, asked)));
        reply.header("ETag", etagOf(row.version));
        return row;
      };
      return viewer === undefined ? rowOf() : doors.answerRead(request, reply, viewer(request), rowOf);
    },
  );
}

/** The id of the record that a path names: its last parameter. */
export function lastParameter(params: Readonly<Record<string, string>>): string {
  return Object.values(params).at(-1) ?? "";
}

/** The record, or the 404 that says there is none. */
export function requireFound<Row>(
  { noun }: { readonly noun: string },
  id: string,
  row: Row | undefined,
): Row {
  if (row === undefined) throw new Problem("not-found", `There is no ${noun} ${id}.`);
  return row;
}
