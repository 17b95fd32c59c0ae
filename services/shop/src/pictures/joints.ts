import { PICTURES } from "@rimwise/drawing";
import type { App } from "../http/app-type.ts";
import type { Doors } from "../http/routes.ts";
import { JointRequestSchema } from "../joints/schema.ts";
import { jointAsked } from "../joints/solve.ts";
import { pictureRoute } from "./picture-route.ts";

export function jointPictureRoutes(app: App, doors: Doors): void {
  pictureRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "joints",
      path: "/v1/joints/picture",
      operationId: "drawJoint",
      summary: "Both halves of a joint closed, as the bits measure now, with the widest gap marked",
      kinds: ["joint"],
      body: JointRequestSchema,
    },
    async ({ body, query: { units } }) => {
      const { solved } = await doors.answer(jointAsked(body));
      return PICTURES.joint.draw({ kind: body.joint, joint: solved, name: "", units });
    },
  );
}
