import type { FastifyContextConfig, FastifyRequest } from "fastify";
import Type, { type Static, type TObject, type TProperties, type TSchema } from "typebox";
import type { Problem } from "../problems/problem.ts";
import type { Kind, RecordOf } from "../store/kind.ts";
import type { Change, Expectation } from "../store/port.ts";
import { type Askable, asked as answerOf, type Question } from "../store/query.ts";
import type { RecordQueries } from "../store/record-queries.ts";
import type { App } from "./app-type.ts";
import { etagOf, requireMatch, staleVersion } from "./conditional.ts";
import { findVisible, lastParameter, requireFound } from "./read-routes.ts";
import { ref } from "./reference.ts";
import {
  type Asked,
  askedOf,
  type BodyOf,
  type Component,
  type Doors,
  type QueryOf,
  type RouteDefinition,
  schemaOf,
} from "./routes.ts";
import { stampOf } from "./write.ts";

/** What a request decided to write, and the record that answers it. */
export type Decided<Shown> = {
  readonly changes: readonly Change[];
  readonly expects?: readonly Expectation[];
  readonly answer: Shown;
};

/** What a creating request decided. */
export type Created<Shown> = Decided<Shown> & {
  /** Kept in place of the answer when the answer holds a secret that is shown once. */
  readonly onRepeat?: Problem;
  readonly headers?: Readonly<Record<string, string>>;
};

/** A record as it is shown. */
type ShownRecord = { readonly id: string; readonly version: number };

type WriteDefinition<
  Path extends string,
  Body extends Component | undefined,
  Shown extends Component,
> = RouteDefinition<Path> & {
  readonly answer: Shown;
  readonly body?: Body;
  readonly bodyLimit?: number;
};

type OnRecord<
  Path extends string,
  K extends Kind,
  Body extends Component | undefined,
  Shown extends Component,
> = WriteDefinition<Path, Body, Shown> & {
  readonly of: RecordQueries<K>;
  /** The record as far as the caller may act on it. Default: as far as the caller sees it. */
  readonly find?: (id: string, asked: Asked<Path, BodyOf<Body>>) => Question<RecordOf<K> | undefined>;
};

/** Registers the creation of a record: done once for each Idempotency-Key, answered with 201, its place and its ETag. */
export function createRoute<
  Path extends string,
  Shown extends Component,
  Body extends Component | undefined = undefined,
  Query extends TObject<TProperties> | undefined = undefined,
>(
  app: App,
  doors: Doors,
  definition: WriteDefinition<Path, Body, Shown> & {
    /** Path of the new record. Default: under the path of the route. */
    readonly location?: (answer: Static<Shown>) => string;
    readonly query?: Query;
    /** The body may also be a file by itself, which becomes what the JSON would be before it is looked at. */
    readonly files?: {
      readonly content: Readonly<Record<string, { readonly schema: TSchema }>>;
      readonly config: FastifyContextConfig;
      readonly preValidation: (request: FastifyRequest) => Promise<void>;
    };
    /** Refuses a valid body after work that goes on beside the event loop, before anything is decided. */
    readonly examine?: (body: BodyOf<Body>) => Promise<void>;
  },
  decide: (asked: Asked<Path, BodyOf<Body>, QueryOf<Query>>) => Askable<Created<Static<Shown> & ShownRecord>>,
): void {
  const { path, scope, answer, body, bodyLimit, location, query, files, examine } = definition;
  const json = body && ref(body);
  app.post(
    path,
    {
      config: { scope, operation: "create", ...files?.config },
      ...(files && { preValidation: files.preValidation }),
      ...(bodyLimit !== undefined && { bodyLimit }),
      schema: schemaOf(definition, {
        ...(query && { querystring: query }),
        ...(json && {
          body:
            files === undefined
              ? json
              : { content: { "application/json": { schema: json }, ...files.content } },
        }),
        response: { 201: ref(answer) },
      }),
    },
    (request, reply) =>
      doors.answerOnce(request, reply, async () => {
        const stamp = stampOf(request, doors.now());
        const asked = askedOf<Path, BodyOf<Body>, QueryOf<Query>>(request, stamp.at);
        await examine?.(asked.body);
        const { answer: shown, headers, ...decided } = await doors.answer(answerOf(decide(asked)));
        const place = location?.(shown) ?? `${path}/${shown.id}`;
        return {
          ...decided,
          stamp,
          status: 201,
          headers: { Location: place, ETag: etagOf(shown.version), ...headers },
          body: shown,
        };
      }),
  );
}

/** Registers the change of a record, the last parameter of the path: of the version that If-Match names, and no other. */
export function changeRoute<
  Path extends string,
  K extends Kind,
  Shown extends Component,
  Body extends Component | undefined = undefined,
>(
  app: App,
  doors: Doors,
  definition: OnRecord<Path, K, Body, Shown> & {
    readonly method?: "PATCH" | "PUT";
    /** Refuses callers who may not change this record. Default: everybody who holds the scope may. */
    readonly mayChange?: (current: RecordOf<K>, asked: Asked<Path, BodyOf<Body>>) => Askable<unknown>;
  },
  decide: (
    current: RecordOf<K>,
    asked: Asked<Path, BodyOf<Body>>,
  ) => Askable<Decided<Static<Shown> & ShownRecord>>,
): void {
  const { path, scope, answer, body, of, mayChange, method = "PATCH", find = findVisible(of) } = definition;

  function* load(asked: Asked<Path, BodyOf<Body>>) {
    const id = lastParameter(asked.params);
    const current = requireFound(of.kind, id, yield* find(id, asked));
    if (mayChange !== undefined) yield* answerOf(mayChange(current, asked));
    requireMatch(asked.request, current.version);
    return yield* answerOf(decide(current, asked));
  }

  app.route({
    method,
    url: path,
    config: { scope, operation: "change" },
    schema: schemaOf(definition, { ...(body && { body: ref(body) }), response: { 200: ref(answer) } }),
    handler: (request, reply) =>
      doors.answerOnce(request, reply, async () => {
        const stamp = stampOf(request, doors.now());
        const asked = askedOf<Path, BodyOf<Body>, Record<never, never>>(request, stamp.at);
        const { answer: body, ...decided } = await doors.answer(load(asked));
        const headers = { ETag: etagOf(body.version) };
        return { ...decided, stamp, status: 200, headers, body, ifStale: staleVersion };
      }),
  });
}

/** Registers the removal of a record: of the version that If-Match names, and no other. */
export function removeRoute<Path extends string, K extends Kind>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & {
    readonly of: RecordQueries<K>;
    readonly gone: string;
  },
  decide: (current: RecordOf<K>, asked: Asked<Path>) => Askable<readonly Change[]>,
): void {
  const { path, scope, of, gone } = definition;

  function* load(asked: Asked<Path>) {
    const id = lastParameter(asked.params);
    const current = requireFound(of.kind, id, yield* findVisible(of)(id, asked));
    requireMatch(asked.request, current.version);
    return yield* answerOf(decide(current, asked));
  }

  app.delete(
    path,
    {
      config: { scope, operation: "remove" },
      schema: schemaOf(definition, { response: { 204: Type.Null({ description: gone }) } }),
    },
    (request, reply) =>
      doors.answerOnce(request, reply, async () => {
        const stamp = stampOf(request, doors.now());
        const asked = askedOf<Path, undefined, Record<never, never>>(request, stamp.at);
        const changes = await doors.answer(load(asked));
        return { stamp, changes, status: 204, body: null, ifStale: staleVersion };
      }),
  );
}

/**
 * Registers something that is done to a record, such as bringing a bit back. It takes no If-Match: it is decided by how things
 * are, again when they changed meanwhile. Without changes no record is written.
 */
export function actRoute<
  Path extends string,
  K extends Kind,
  Shown extends Component,
  Body extends Component | undefined = undefined,
>(
  app: App,
  doors: Doors,
  definition: OnRecord<Path, K, Body, Shown>,
  decide: (
    current: RecordOf<K>,
    asked: Asked<Path, BodyOf<Body>>,
  ) => Askable<Decided<Static<Shown> & { readonly version?: number }>>,
): void {
  const { path, scope, answer, body, of, find = findVisible(of) } = definition;

  function* load(asked: Asked<Path, BodyOf<Body>>) {
    const id = lastParameter(asked.params);
    const current = requireFound(of.kind, id, yield* find(id, asked));
    return yield* answerOf(decide(current, asked));
  }

  app.post(
    path,
    {
      config: { scope, operation: "act" },
      schema: schemaOf(definition, { ...(body && { body: ref(body) }), response: { 200: ref(answer) } }),
    },
    (request, reply) =>
      doors.answerOnce(request, reply, async () => {
        const stamp = stampOf(request, doors.now());
        const asked = askedOf<Path, BodyOf<Body>, Record<never, never>>(request, stamp.at);
        const { answer: body, ...decided } = await doors.answer(load(asked));
        const headers = body.version === undefined ? {} : { ETag: etagOf(body.version) };
        return { ...decided, stamp, status: 200, headers, body };
      }),
  );
}
