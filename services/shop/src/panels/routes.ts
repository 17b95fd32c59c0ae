import { planPanelWork, sizePanels } from "@rimwise/domain";
import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import type { Sources } from "../plans/gather.ts";
import { UnitsQuery } from "../plans/schema.ts";
import { PanelsAnswerSchema } from "./answer-schema.ts";
import { gatherPanels } from "./gather.ts";
import { presentPanels } from "./present.ts";
import { PANEL_SCHEMAS, PanelsRequestSchema } from "./schema.ts";

/** Register after the plans: their schemas are part of the answer. */
export function panelRoutes(app: App, { sources }: { sources: Sources }): void {
  for (const schema of PANEL_SCHEMAS) app.addSchema(schema);

  app.post(
    "/v1/panels/size",
    {
      config: { scope: "plans:compute", operation: "act" },
      schema: {
        operationId: "sizePanels",
        tags: ["panels"],
        summary: "Size panels for their frames, with the plan of their edges",
        querystring: UnitsQuery,
        body: ref(PanelsRequestSchema),
        response: { 200: ref(PanelsAnswerSchema) },
      },
    },
    async ({ body, query }) => {
      const { input, machine } = await gatherPanels(body, sources);
      const sizing = sizePanels(input);
      const work = machine && planPanelWork(sizing, input.thicknessMm, machine);
      return presentPanels(
        sizing,
        work,
        input,
        body.openings.map(({ name }) => name),
        query.units,
      );
    },
  );
}
