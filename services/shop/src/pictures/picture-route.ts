import { type PictureKind, type Scene, svg } from "@rimwise/drawing";
import type { FastifyReply } from "fastify";
import Type, { type Static, type TObject, type TProperties } from "typebox";
import type { App } from "../http/app-type.ts";
import { type ContentAsked, contentRoute, type NoQuery } from "../http/content-routes.ts";
import type { BodyOf, Component, Doors, RouteDefinition } from "../http/routes.ts";
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

/** Registers pictures of something: a GET, or a POST when it has a body. */
export function pictureRoute<
  Path extends string,
  const Kind extends PictureKind,
  Body extends Component | undefined = undefined,
  Query extends TObject<TProperties> = NoQuery,
>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & {
    readonly kinds: readonly [Kind, ...Kind[]];
    readonly body?: Body;
    readonly query?: Query;
  },
  draw: (
    asked: ContentAsked<Path, BodyOf<Body>, PictureQuery<Kind> & Static<Query>>,
  ) => Promise<Scene | Drawn>,
): void {
  const answer = { common: pictureQuery(definition.kinds), response: ANSWER };
  contentRoute(app, doors, definition, answer, async (asked, reply) => {
    const drawn = await draw(asked);
    return send(reply, "svg" in drawn ? drawn.svg : svg(drawn), asked.query);
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
