import { type Card, cardText } from "@rimwise/domain";
import type { PaperName } from "@rimwise/drawing";
import Type, { type Static, type TObject, type TProperties } from "typebox";
import type { App } from "../http/app-type.ts";
import { type ContentAsked, contentRoute, type NoQuery } from "../http/content-routes.ts";
import type { BodyOf, Component, Doors, RouteDefinition } from "../http/routes.ts";
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

/** Registers a sheet to print: a GET, or a POST when it has a body. */
export function printRoute<
  Path extends string,
  Body extends Component | undefined = undefined,
  Query extends TObject<TProperties> = NoQuery,
>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & {
    readonly usualPaper: PaperName;
    readonly body?: Body;
    readonly query?: Query;
  },
  print: (asked: ContentAsked<Path, BodyOf<Body>, PrintQuery & Static<Query>>) => Promise<Printed>,
): void {
  const answer = { common: printQuery(definition.usualPaper), response: ANSWER };
  contentRoute(app, doors, definition, answer, async (asked, reply) => {
    const { pages, card } = await print(asked);
    const { format } = asked.query;
    if (format !== "text") return sendPages(reply, pages(), format);
    return reply.type("text/plain; charset=utf-8").send(`${cardText(card())}\n`);
  });
}
