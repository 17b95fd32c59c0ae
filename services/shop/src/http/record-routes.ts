import type { FastifyRequest } from "fastify";
import Type, { type TProperties, type TSchema } from "typebox";
import type { Scope } from "../keys/scopes.ts";
import { Problem } from "../problems/problem.ts";
import type { App } from "./app-type.ts";
import { etagOf } from "./conditional.ts";
import { PageQuery, sendPage } from "./paging.ts";
import { ref } from "./reference.ts";

type Component = TSchema & { readonly $id?: string };

type Route = {
  readonly path: string;
  readonly scope: Scope;
  readonly tag: string;
  readonly operationId: string;
  readonly summary: string;
};

type ListRoute = Route & {
  readonly page: Component;
  /** Query parameters of text that narrow the list. */
  readonly filters?: TProperties;
};

type ReadRoute = Route & {
  readonly record: Component;
  /** What is read, as a person would say. */
  readonly noun: string;
  /** The path parameter that names it. */
  readonly parameter: string;
};

/** A query parameter that narrows a list to what names a record. */
export function idFilter(description: string) {
  return Type.Optional(Type.String({ maxLength: 100, description }));
}

/** The filters of a list as they came. */
export type Filters = Readonly<Record<string, string | undefined>>;

/** Registers a list by pages, oldest first. */
export function listRoute<Row extends { readonly id: string }>(
  app: App,
  { path, scope, tag, operationId, summary, page, filters = {} }: ListRoute,
  read: (afterId: string, most: number, filters: Filters, request: FastifyRequest) => Promise<Row[]>,
): void {
  const querystring = Type.Object({ ...PageQuery.properties, ...filters }, { additionalProperties: false });
  app.get<{ Querystring: { limit: number; cursor?: string } & Filters }>(
    path,
    {
      config: { scope, operation: "list" },
      schema: { operationId, tags: [tag], summary, querystring, response: { 200: ref(page) } },
    },
    (request, reply) => {
      const { limit, cursor, ...given } = request.query;
      const ask = { limit, ...(cursor !== undefined && { cursor }) };
      return sendPage(request, reply, ask, (afterId, most) => read(afterId, most, given, request));
    },
  );
}

/** Registers the reading of one record by its id. `shown` is what may be told of it. */
export function readRoute<Row extends { readonly version: number }>(
  app: App,
  { path, scope, tag, operationId, summary, record, noun, parameter }: ReadRoute,
  find: (id: string, request: FastifyRequest) => Promise<Row | undefined>,
  shown: (row: Row) => object = (row) => row,
): void {
  const params = Type.Object({ [parameter]: Type.String({ description: `Id of a ${noun}.` }) });
  app.get<{ Params: Readonly<Record<string, string>> }>(
    path,
    {
      config: { scope, operation: "read" },
      schema: { operationId, tags: [tag], summary, params, response: { 200: ref(record) } },
    },
    async (request, reply) => {
      const id = request.params[parameter] ?? "";
      const row = requireFound(noun, id, await find(id, request));
      reply.header("ETag", etagOf(row.version));
      return shown(row);
    },
  );
}

/** The record, or the 404 that says there is none. */
export function requireFound<Row>(noun: string, id: string, row: Row | undefined): Row {
  if (row === undefined) throw new Problem("not-found", `There is no ${noun} ${id}.`);
  return row;
}
