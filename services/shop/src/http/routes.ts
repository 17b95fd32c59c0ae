import type { FastifyRequest, FastifySchema } from "fastify";
import Type, { type Static, type TObject, type TProperties, type TSchema } from "typebox";
import type { Scope } from "../access/scopes.ts";
import type { Leases } from "../store/leases.ts";
import type { Answer } from "../store/store.ts";
import type { AnswerOnce } from "./answer-once.ts";
import type { AnswerRead } from "./answer-read.ts";
import type { Validator } from "./validation.ts";
import type { Write } from "./write.ts";

/** What every room may use: questions are answered, write batches written, and the clock read. */
export type Doors = {
  readonly answer: Answer;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly answerRead: AnswerRead;
  /** What one process at a time may do. */
  readonly leases: Leases;
  readonly now: () => Date;
  /** What is wrong with a value by a component's schema; undefined if nothing is. */
  readonly validatorOf: (schema: object) => Validator;
};

/** A schema that other schemas refer to by its `$id`. */
export type Component = TSchema & { readonly $id?: string };

/** What every route says of itself. */
export type RouteDefinition<Path extends string> = {
  readonly path: Path;
  readonly scope: Scope;
  readonly tag: string;
  readonly operationId: string;
  readonly summary: string;
  readonly description?: string;
  /** What the path's parameters name when their names do not say it. */
  readonly parameters?: { readonly [Name in ParameterIn<Path>]?: string };
};

type ParameterIn<Path extends string> = Path extends `${string}:${infer Name}/${infer Rest}`
  ? Name | ParameterIn<Rest>
  : Path extends `${string}:${infer Name}`
    ? Name
    : never;

/** The parameters of a path such as `/v1/bits/:bitId`. */
export type PathParameters<Path extends string> = { readonly [Name in ParameterIn<Path>]: string };

/** The query of a request; nothing when its route declares none. */
export type QueryOf<Query extends TObject<TProperties> | undefined> = Query extends TSchema
  ? Static<Query>
  : Record<never, never>;

/** The body of a request; nothing when its route declares none. */
export type BodyOf<Body extends Component | undefined> = Body extends Component ? Static<Body> : undefined;

/** A request as a room sees it. */
export type Asked<Path extends string, Body = undefined, Query = Record<never, never>> = {
  readonly params: PathParameters<Path>;
  readonly body: Body;
  readonly query: Query;
  /** When it is decided: RFC 3339, UTC. */
  readonly at: string;
  readonly request: FastifyRequest;
};

/**
 * A request as a room sees it. Its parts have been validated by the schemas that these types come from; the framework's own
 * types cannot say so of a route whose schemas are not known yet.
 */
export function askedOf<Path extends string, Body, Query>(
  request: FastifyRequest,
  at: string,
): Asked<Path, Body, Query> {
  const { params, body, query } = request;
  return { params, body, query, at, request } as Asked<Path, Body, Query>;
}

const PARAMETER = /:(\w+)/g;

/** The schema of a path's parameters; undefined for a path without any. */
function parametersSchema<Path extends string>({
  path,
  parameters = {},
}: Omit<RouteDefinition<Path>, "scope">) {
  const names = [...path.matchAll(PARAMETER)].flatMap(([, name]) => name ?? []);
  if (names.length === 0) return undefined;
  const said: Readonly<Record<string, string | undefined>> = parameters;
  return Type.Object(
    Object.fromEntries(
      names.map((name) => [name, Type.String({ description: `Id of ${said[name] ?? named(name)}.` })]),
    ),
  );
}

/** The schema of a route: what every route has, and the parts that are its own. */
export function schemaOf<Path extends string>(
  definition: Omit<RouteDefinition<Path>, "scope">,
  parts: Pick<FastifySchema, "body" | "querystring" | "response">,
): FastifySchema {
  const { operationId, tag, summary, description } = definition;
  const params = parametersSchema(definition);
  return {
    operationId,
    tags: [tag],
    summary,
    ...(description !== undefined && { description }),
    ...(params !== undefined && { params }),
    ...parts,
  };
}

/** `bitId` names a bit. */
function named(parameter: string): string {
  const noun = parameter.replace(/Id$/, "").replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  // A vowel that is spoken like one: "a use".
  return `${/^(?!us)[aeiou]/.test(noun) ? "an" : "a"} ${noun}`;
}
