import type { Static, TObject, TProperties } from "typebox";
import { type Askable, asked as answerOf } from "../store/query.ts";
import type { App } from "./app-type.ts";
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

/** Registers a question that is answered from what is kept, and changes nothing: a GET, or a POST when it has a body. */
export function askRoute<
  Path extends string,
  Shown extends Component,
  Body extends Component | undefined = undefined,
  Query extends TObject<TProperties> | undefined = undefined,
>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & {
    readonly answer: Shown;
    readonly body?: Body;
    readonly query?: Query;
  },
  reply: (asked: Asked<Path, BodyOf<Body>, QueryOf<Query>>) => Askable<Static<Shown>>,
): void {
  const { path, scope, answer, body, query } = definition;
  app.route({
    method: body === undefined ? "GET" : "POST",
    url: path,
    config: { scope, operation: "act" },
    schema: schemaOf(definition, {
      ...(body && { body: ref(body) }),
      ...(query && { querystring: query }),
      response: { 200: ref(answer) },
    }),
    handler: (request) => {
      const at = doors.now().toISOString();
      return doors.answer(answerOf(reply(askedOf<Path, BodyOf<Body>, QueryOf<Query>>(request, at))));
    },
  });
}
