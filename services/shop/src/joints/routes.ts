import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import type { Doors } from "../http/routes.ts";
import {
  JOINT_SCHEMAS,
  JointRequestSchema,
  SolvedJointSchema,
  TemplateFitSchema,
  TemplateRequestSchema,
} from "./schema.ts";
import { fittedTemplate, solvedJoint } from "./solve.ts";

/** Register after the plans: their schemas are part of the requests. */
export function jointRoutes(app: App, doors: Doors): void {
  for (const schema of JOINT_SCHEMAS) app.addSchema(schema);

  askRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "joints",
      path: "/v1/joints/solve",
      operationId: "solveJoint",
      summary:
        "Set both halves of a joint for the fit wanted, and lay them on each other as the bits measure now",
      body: JointRequestSchema,
      answer: SolvedJointSchema,
    },
    ({ body }) => solvedJoint(body),
  );

  askRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "joints",
      path: "/v1/joints/template",
      operationId: "fitTemplate",
      summary: "What a bit cuts along a template: offset, corners and inlay pairs",
      body: TemplateRequestSchema,
      answer: TemplateFitSchema,
    },
    ({ body }) => fittedTemplate(body),
  );
}
