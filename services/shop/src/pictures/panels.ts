import { sizePanels } from "@rimwise/domain";
import { PICTURES } from "@rimwise/drawing";
import Type from "typebox";
import type { App } from "../http/app-type.ts";
import type { Doors } from "../http/routes.ts";
import { gatherPanels } from "../panels/gather.ts";
import { PanelsRequestSchema } from "../panels/schema.ts";
import { notValid } from "../problems/problem.ts";
import { pictureRoute } from "./picture-route.ts";

export function panelPictureRoutes(app: App, doors: Doors): void {
  pictureRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "panels",
      path: "/v1/panels/picture",
      operationId: "drawPanel",
      summary: "A panel's edges in the grooves of its frame, at the driest and the wettest of the year",
      kinds: ["panel"],
      body: PanelsRequestSchema,
      query: Type.Object({
        opening: Type.Integer({
          minimum: 1,
          default: 1,
          description: "Of which opening, by its place in the list.",
        }),
      }),
    },
    async ({ body, query: { units, opening }, at }) => {
      const { input } = await doors.answer(gatherPanels(body, at));
      const { panels, raising } = sizePanels(input);
      const panel = panels[opening - 1];
      if (panel === undefined) {
        const accepted = `1 to ${panels.length}`;
        throw notValid([
          { in: "query", pointer: "/opening", message: "The list has no such opening.", accepted },
        ]);
      }
      const { bit, thicknessMm, groove } = input;
      return PICTURES.panel.draw({
        panel,
        groove,
        thicknessMm,
        ...(bit && raising && { raising: { bit, ...raising } }),
        name: body.openings[opening - 1]?.name ?? "",
        units,
      });
    },
  );
}
