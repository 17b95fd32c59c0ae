import { type PictureKind, type Scene, svg } from "@rimwise/drawing";
import type { FastifyReply } from "fastify";
import Type, { type Static, type TObject, type TProperties } from "typebox";
import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import {
  type Asked,
  askedOf,
  type BodyOf,
  type Component,
  type Doors,
  type RouteDefinition,
  schemaOf,
} from "../http/routes.ts";
import { type Turns, turnsOf } from "../http/turns.ts";
import { type PictureQuery, pictureQuery } from "./picture-query.ts";
import { pngOf } from "./png.ts";

const ANSWER = {
  200: {
    description: "The picture, in millimetres as SVG.",
    content: {
      "image/svg+xml": { schema: Type.String({ description: "SVG." }) },
      "image/png": { schema: Type.String({ format: "binary", description: "PNG." }) },
    },
  },
};

/** Nothing in a picture acts or is fetched, wherever it is opened. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

/** A picture that is text already. */
export type Drawn = { readonly svg: string };

/** A picture that is asked for, with turns for what takes long. */
export type PictureAsked<
  Path extends string,
  Body,
  Kind extends PictureKind,
  Query extends TObject<TProperties> = TObject<Record<never, never>>,
> = Asked<Path, Body, PictureQuery<Kind> & Static<Query>> & { readonly turns: Turns };

/** Registers pictures of something: a GET, or a POST when it has a body. */
export function pictureRoute<
  Path extends string,
  const Kind extends PictureKind,
  Body extends Component | undefined = undefined,
  Query extends TObject<TProperties> = TObject<Record<never, never>>,
>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & {
    readonly kinds: readonly [Kind, ...Kind[]];
    readonly body?: Body;
    readonly query?: Query;
  },
  draw: (asked: PictureAsked<Path, BodyOf<Body>, Kind, Query>) => Promise<Scene | Drawn>,
): void {
  const { path, scope, kinds, body, query } = definition;
  const pictured = pictureQuery(kinds);
  app.route({
    method: body === undefined ? "GET" : "POST",
    url: path,
    config: { scope, operation: "act" },
    schema: schemaOf(definition, {
      ...(body && { body: ref(body) }),
      querystring: Type.Object(
        { ...query?.properties, ...pictured.properties },
        { additionalProperties: false },
      ),
      response: ANSWER,
    }),
    handler: async (request, reply) => {
      const at = doors.now().toISOString();
      const asked = askedOf<Path, BodyOf<Body>, PictureQuery<Kind> & Static<Query>>(request, at);
      const drawn = await draw({ ...asked, turns: turnsOf(reply) });
      return send(reply, "svg" in drawn ? drawn.svg : svg(drawn), asked.query);
    },
  });
}

async function send(
  reply: FastifyReply,
  text: string,
  { format, widthPx }: Pick<PictureQuery<PictureKind>, "format" | "widthPx">,
): Promise<FastifyReply> {
  reply.header("Content-Security-Policy", POLICY);
  return format === "svg"
    ? reply.type("image/svg+xml").send(text)
    : reply.type("image/png").send(await pngOf(text, widthPx));
}
