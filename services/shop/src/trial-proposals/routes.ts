import Type from "typebox";
import { bits } from "../bits/reads.ts";
import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import { unknownRecord } from "../http/named-records.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { knownBit, knownRouter } from "../learned/learned.ts";
import { notValid } from "../problems/problem.ts";
import { routers } from "../routers/kind.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { proposedTrial, TrialProposalSchema } from "./proposal.ts";

const NextQuery = Type.Object(
  { routerId: Type.String({ minLength: 1, maxLength: 100, description: "The router to try it in." }) },
  { additionalProperties: false },
);

export function trialProposalRoutes(app: App, doors: Doors): void {
  app.addSchema(TrialProposalSchema);

  askRoute(
    app,
    doors,
    {
      scope: "trials:read",
      tag: "speedTrials",
      path: "/v1/bits/:bitId/speed-trials/next",
      operationId: "proposeSpeedTrial",
      summary: "The next speed to try, rising in steps from the slowest and never over the ceiling",
      query: NextQuery,
      answer: TrialProposalSchema,
    },
    function* ({ params: { bitId }, query: { routerId }, at }) {
      const policy = yield* shopPolicy();
      const bit = requireFound(bits.kind, bitId, yield* knownBit(bitId, at, policy));
      const router = yield* knownRouter(routerId, at, policy);
      if (router === undefined) throw notValid([unknownRecord("/routerId", routers.kind.noun, "query")]);
      return proposedTrial(bit, router, policy);
    },
  );
}
