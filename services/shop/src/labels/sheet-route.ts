import { type Label, labelPage, labelsPerPage, type Scene, STOCKS, type StockName } from "@rimwise/drawing";
import Type, { type Static, type TObject, type TProperties } from "typebox";
import type { App } from "../http/app-type.ts";
import { contentRoute, type NoQuery } from "../http/content-routes.ts";
import { namesOf } from "../http/names-of.ts";
import type { Asked, Doors, RouteDefinition } from "../http/routes.ts";
import type { Turns } from "../http/turns.ts";
import { PAGES_CONTENT, sendPages } from "../printing/send-pages.ts";
import type { Question } from "../store/query.ts";
import { type CodedLabel, labelOf } from "./label.ts";

/** Labels for pages. */
export type LabelSheet = { readonly title: string; readonly labels: readonly CodedLabel[] };

const SHEET_ANSWER = {
  200: { description: "Pages of labels, to print at full size.", content: PAGES_CONTENT },
};

const STOCK_NAMES = namesOf(STOCKS);

const SheetQuery = Type.Object({
  stock: Type.Enum([...STOCK_NAMES], {
    type: "string",
    default: "a4-plain",
    description: `What they are printed on. ${STOCK_NAMES.map((name) => `\`${name}\`: ${STOCKS[name].meaning}`).join(" ")}`,
  }),
  format: Type.Enum(["html", "pdf"], {
    type: "string",
    default: "html",
    description: "HTML to print from a browser, or PDF with its fonts.",
  }),
});

/** Registers pages of labels. They are made page by page, so that a large one keeps nobody waiting. */
export function labelSheetRoute<Path extends string, Query extends TObject<TProperties> = NoQuery>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & { readonly query?: Query },
  sheet: (asked: Asked<Path, undefined, Static<typeof SheetQuery> & Static<Query>>) => Question<LabelSheet>,
): void {
  const answer = { common: SheetQuery, response: SHEET_ANSWER };
  contentRoute(app, doors, definition, answer, async (asked, reply) => {
    const { title, labels } = await doors.answer(sheet(asked));
    const { stock, format } = asked.query;
    return sendPages(reply, { title, pages: pagesOf(title, labels, stock, asked.turns) }, format);
  });
}

/** Pages of a stock, as they are asked for; one without labels for none. A code takes a while: others have their turn after each. */
async function* pagesOf(
  title: string,
  labels: readonly CodedLabel[],
  stock: StockName,
  turns: Turns,
): AsyncGenerator<Scene> {
  const perPage = labelsPerPage(stock);
  const count = Math.max(1, Math.ceil(labels.length / perPage));
  for (let number = 1; number <= count; number += 1) {
    const coded: Label[] = [];
    for (const label of labels.slice((number - 1) * perPage, number * perPage)) {
      coded.push(labelOf(label));
      await turns();
    }
    yield labelPage(stock, coded, `${title}, page ${number} of ${count}`);
  }
}
