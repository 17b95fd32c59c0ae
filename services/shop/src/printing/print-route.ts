import { type Card, cardText } from "@rimwise/domain";
import type { PaperName } from "@rimwise/drawing";
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
import type { Pages } from "./pages.ts";
import { type PrintQuery, printQuery } from "./print-query.ts";
import { PAGES_CONTENT, sendPages } from "./send-pages.ts";

const ANSWER = {
  200: {
    description: "The sheet.",
    content: {
      ...PAGES_CONTENT,
      "text/plain": { schema: Type.String({ description: "A card of text, 97 signs wide." }) },
    },
  },
};

/** Something to print: its pages and the same in words, of which one is made. */
export type Printed = { readonly pages: () => Pages; readonly card: () => Card };

/** A sheet that is asked for, with turns for what takes long. */
export type PrintAsked<
  Path extends string,
  Body,
  Query extends TObject<TProperties> = TObject<Record<never, never>>,
> = Asked<Path, Body, PrintQuery & Static<Query>> & { readonly turns: Turns };

/** Registers a sheet to print: a GET, or a POST when it has a body. */
export function printRoute<
  Path extends string,
  Body extends Component | undefined = undefined,
  Query extends TObject<TProperties> = TObject<Record<never, never>>,
>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & {
    readonly usualPaper: PaperName;
    readonly body?: Body;
    readonly query?: Query;
  },
  print: (asked: PrintAsked<Path, BodyOf<Body>, Query>) => Promise<Printed>,
): void {
  const { path, scope, usualPaper, body, query } = definition;
  app.route({
    method: body === undefined ? "GET" : "POST",
    url: path,
    config: { scope, operation: "act" },
    schema: schemaOf(definition, {
      ...(body && { body: ref(body) }),
      querystring: Type.Object(
        { ...query?.properties, ...printQuery(usualPaper).properties },
        { additionalProperties: false },
      ),
      response: ANSWER,
    }),
    handler: async (request, reply) => {
      const at = doors.now().toISOString();
      const asked = askedOf<Path, BodyOf<Body>, PrintQuery & Static<Query>>(request, at);
      const { pages, card } = await print({ ...asked, turns: turnsOf(reply) });
      const { format } = asked.query;
      if (format !== "text") return sendPages(reply, pages(), format);
      return reply.type("text/plain; charset=utf-8").send(`${cardText(card())}\n`);
    },
  });
}
