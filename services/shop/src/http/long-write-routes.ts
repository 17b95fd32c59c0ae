import type { Static } from "typebox";
import type { Kind, RecordOf } from "../store/kind.ts";
import type { RecordQueries } from "../store/record-queries.ts";
import type { Admit } from "./admission.ts";
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
  type RouteDefinition,
  schemaOf,
} from "./routes.ts";
import { type Turns, turnsOf } from "./turns.ts";
import { stampOf } from "./write.ts";
import type { Decided } from "./write-routes.ts";

/** What a long decision works with: it gives others their turn between pieces of work. */
export type Work<Asking> = Asking & { readonly turns: Turns };

type LongDefinition<
  Path extends string,
  Body extends Component | undefined,
  Shown extends Component,
> = RouteDefinition<Path> & {
  readonly answer: Shown;
  readonly body?: Body;
  readonly bodyLimit?: number;
  readonly admit: Admit;
};

/** Registers the creation of a record whose decision takes long: as `createRoute`, one of each key at a time. */
export function createLongRoute<
  Path extends string,
  Shown extends Component,
  Body extends Component | undefined = undefined,
>(
  app: App,
  doors: Doors,
  definition: LongDefinition<Path, Body, Shown>,
  decide: (
    work: Work<Asked<Path, BodyOf<Body>>>,
  ) => Promise<Decided<Static<Shown> & { readonly id: string; readonly version: number }>>,
): void {
  const { path, scope, answer, body, bodyLimit, admit } = definition;
  app.post(
    path,
    {
      config: { scope, operation: "create" },
      ...(bodyLimit !== undefined && { bodyLimit }),
      schema: schemaOf(definition, { ...(body && { body: ref(body) }), response: { 201: ref(answer) } }),
    },
    (request, reply) =>
      doors.answerOnce(request, reply, () =>
        admit(request, async () => {
          const stamp = stampOf(request, doors.now());
          const asked = askedOf<Path, BodyOf<Body>, Record<never, never>>(request, stamp.at);
          const { answer: shown, ...decided } = await decide({ ...asked, turns: turnsOf(reply) });
          const headers = { Location: `${path}/${shown.id}`, ETag: etagOf(shown.version) };
          return { ...decided, stamp, status: 201, headers, body: shown };
        }),
      ),
  );
}

/**
 * Registers something done to a record whose decision takes long: as `actRoute`, or as `changeRoute` of the version that If-Match
 * names, one of each key at a time.
 */
export function actLongRoute<
  Path extends string,
  K extends Kind,
  Shown extends Component,
  Body extends Component | undefined = undefined,
>(
  app: App,
  doors: Doors,
  definition: LongDefinition<Path, Body, Shown> & {
    readonly of: RecordQueries<K>;
    /** Whether it changes the version that If-Match names. Default: it is done to the record however it is. */
    readonly method?: "PATCH";
  },
  decide: (
    current: RecordOf<K>,
    work: Work<Asked<Path, BodyOf<Body>>>,
  ) => Promise<Decided<Static<Shown> & { readonly version: number }>>,
): void {
  const { path, scope, answer, body, bodyLimit, of, admit, method } = definition;
  app.route({
    method: method ?? "POST",
    url: path,
    config: { scope, operation: method === undefined ? "act" : "change" },
    ...(bodyLimit !== undefined && { bodyLimit }),
    schema: schemaOf(definition, { ...(body && { body: ref(body) }), response: { 200: ref(answer) } }),
    handler: (request, reply) =>
      doors.answerOnce(request, reply, () =>
        admit(request, async () => {
          const stamp = stampOf(request, doors.now());
          const asked = askedOf<Path, BodyOf<Body>, Record<never, never>>(request, stamp.at);
          const id = lastParameter(asked.params);
          const current = requireFound(of.kind, id, await doors.answer(findVisible(of)(id, asked)));
          if (method !== undefined) requireMatch(request, current.version);
          const { answer: shown, ...decided } = await decide(current, { ...asked, turns: turnsOf(reply) });
          const headers = { ETag: etagOf(shown.version) };
          const ifStale = method === undefined ? {} : { ifStale: staleVersion };
          return { ...decided, stamp, status: 200, headers, body: shown, ...ifStale };
        }),
      ),
  });
}
