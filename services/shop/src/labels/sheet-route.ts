import { Readable } from "node:stream";
import { setImmediate } from "node:timers/promises";
import Type, { type TObject, type TProperties } from "typebox";
import type { App } from "../http/app-type.ts";
import {
  type Asked,
  askedOf,
  type Doors,
  type QueryOf,
  type RouteDefinition,
  schemaOf,
} from "../http/routes.ts";
import type { Question } from "../store/query.ts";
import { escaped, type Label, labelSvg } from "./label.ts";

/** A page of labels. */
export type LabelSheet = { readonly title: string; readonly labels: readonly Label[] };

const SHEET_ANSWER = {
  200: {
    description: "Labels of 62 × 29 mm, one after the other, to print from a browser at full size.",
    content: { "text/html": { schema: Type.String({ description: "HTML." }) } },
  },
};

/** Nothing but what the page itself says: no script, no address but its own style. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'";

/** A label is not cut in two by the end of a page. */
const STYLE =
  "@page{margin:8mm}body{margin:0;font-family:Arial,Helvetica,sans-serif}" +
  "main{display:flex;flex-wrap:wrap;gap:2mm}svg{break-inside:avoid;outline:0.1mm dashed #999}h1{font-size:4mm}";

/** Registers a page of labels. It is sent label by label, so that a large one keeps nobody waiting. */
export function labelSheetRoute<
  Path extends string,
  Query extends TObject<TProperties> | undefined = undefined,
>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path> & { readonly query?: Query },
  sheet: (asked: Asked<Path, undefined, QueryOf<Query>>) => Question<LabelSheet>,
): void {
  const { path, scope, query } = definition;
  app.get(
    path,
    {
      config: { scope, operation: "act" },
      schema: schemaOf(definition, { ...(query && { querystring: query }), response: SHEET_ANSWER }),
    },
    async (request, reply) => {
      const asked = askedOf<Path, undefined, QueryOf<Query>>(request, doors.now().toISOString());
      const parts = partsOf(await doors.answer(sheet(asked)));
      return reply
        .type("text/html; charset=utf-8")
        .header("Content-Security-Policy", POLICY)
        .send(Readable.from(parts));
    },
  );
}

async function* partsOf({ title, labels }: LabelSheet): AsyncGenerator<string> {
  yield `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${escaped(title)}</title><style>${STYLE}</style></head>` +
    `<body><h1>${escaped(title)}: ${labels.length} labels</h1><main>`;
  for (const label of labels) {
    yield labelSvg(label);
    await setImmediate();
  }
  yield "</main></body></html>\n";
}
