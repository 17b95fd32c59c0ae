import { planPanelWork, sizePanels } from "@rimwise/domain";
import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import type { Doors } from "../http/routes.ts";
import { UnitsQuery } from "../plans/schema.ts";
import { PanelsAnswerSchema } from "./answer-schema.ts";
import { gatherPanels } from "./gather.ts";
import { presentPanels } from "./present.ts";
import { PANEL_SCHEMAS, PanelsRequestSchema } from "./schema.ts";

/** Register after the plans: their schemas are part of the answer. */
export function panelRoutes(app: App, doors: Doors): void {
  for (const schema of PANEL_SCHEMAS) app.addSchema(schema);

  askRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "panels",
      path: "/v1/panels/size",
      operationId: "sizePanels",
      summary: "Size panels for their frames, with the plan of their edges",
      query: UnitsQuery,
      body: PanelsRequestSchema,
      answer: PanelsAnswerSchema,
    },
    function* ({ body, query: { units }, at }) {
      const { input, machine } = yield* gatherPanels(body, at);
      const sizing = sizePanels(input);
      const work = machine && planPanelWork(sizing, input.thicknessMm, machine);
      const names = body.openings.map(({ name }) => name);
      return presentPanels(sizing, work, input, names, units);
    },
  );
}
