import { labelScene, svg } from "@rimwise/drawing";
import Type from "typebox";
import type { App } from "../http/app-type.ts";
import { contentRoute } from "../http/content-routes.ts";
import type { Asked, Doors, RouteDefinition } from "../http/routes.ts";
import type { Question } from "../store/query.ts";
import { type CodedLabel, labelOf } from "./label.ts";

const SVG_TYPE = "image/svg+xml";

/** What an operation says of an answer that is a label. */
const LABEL_ANSWER = {
  200: {
    description: "A label of 62 × 29 mm with a QR code that opens the record's page.",
    content: { [SVG_TYPE]: { schema: Type.String({ description: "SVG, in millimetres." }) } },
  },
};

/** Registers a label to print. */
export function labelRoute<Path extends string>(
  app: App,
  doors: Doors,
  definition: RouteDefinition<Path>,
  label: (asked: Asked<Path>) => Question<CodedLabel>,
): void {
  const answer = { common: Type.Object({}), response: LABEL_ANSWER };
  contentRoute(app, doors, definition, answer, async (asked, reply) =>
    reply.type(SVG_TYPE).send(svg(labelScene(labelOf(await doors.answer(label(asked)))))),
  );
}
