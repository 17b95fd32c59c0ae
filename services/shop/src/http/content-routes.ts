import type { FastifyReply, FastifySchema } from "fastify";
import Type, { type Static, type TObject, type TProperties } from "typebox";
import type { App } from "./app-type.ts";
import { ref } from "./reference.ts";
import {
  type Asked,
  askedOf,
  type BodyOf,
  type Component,
  type Doors,
  type RouteDefinition,
  schemaOf,
} from "./routes.ts";
import { type Turns, turnsOf } from "./turns.ts";

/** Query parameters of none. */
export type NoQuery = TObject<Record<never, never>>;

/** What is asked for, with turns for what takes long. */
export type ContentAsked<Path extends string, Body, Query> = Asked<Path, Body, Query> & {
  readonly turns: Turns;
};

/**
 * Registers a question whose answer is no JSON: a picture, a sheet. A GET, or a POST when it has a body. Its query is what the kind of
 * answer takes, `common`, and what this route takes besides.
 */
export function contentRoute<
  Path extends string,
  Common extends TObject<TProperties>,
  Body extends Component | undefined = undefined,
  Query extends TObject<TProperties> = NoQuery,
>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & { readonly body?: Body; readonly query?: Query },
  { common, response }: { readonly common: Common; readonly response: FastifySchema["response"] },
  answer: (
    asked: ContentAsked<Path, BodyOf<Body>, Static<Common> & Static<Query>>,
    reply: FastifyReply,
  ) => Promise<FastifyReply>,
): void {
  const { path, scope, body, query } = definition;
  const properties = { ...query?.properties, ...common.properties };
  app.route({
    method: body === undefined ? "GET" : "POST",
    url: path,
    config: { scope, operation: "act" },
    schema: schemaOf(definition, {
      ...(body && { body: ref(body) }),
      ...(Object.keys(properties).length > 0 && {
        querystring: Type.Object(properties, { additionalProperties: false }),
      }),
      response,
    }),
    handler: (request, reply) => {
      const at = doors.now().toISOString();
      const asked = askedOf<Path, BodyOf<Body>, Static<Common> & Static<Query>>(request, at);
      return answer({ ...asked, turns: turnsOf(reply) }, reply);
    },
  });
}
