import { callerOf } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import type { App } from "../http/app-type.ts";
import { requireOne } from "../http/named-records.ts";
import { listRecordsRoute, readRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute, createRoute } from "../http/write-routes.ts";
import { routers } from "../routers/kind.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { newId } from "../store/id.ts";
import { usableRouter } from "../usable-routers/reads.ts";
import { enterTrial, setTrialAside } from "./decide.ts";
import { trialKind, trials } from "./kind.ts";
import { NewTrialSchema, SetAsideSchema, TRIAL_SCHEMAS, TrialPageSchema, TrialSchema } from "./schema.ts";

const READ = { scope: "trials:read", tag: "speedTrials", of: trials } as const;
const WRITE = { scope: "trials:write", tag: "speedTrials", of: trials, answer: TrialSchema } as const;
const PARAMETERS = { speedTrialId: "a speed trial" };

export function speedTrialRoutes(app: App, doors: Doors): void {
  for (const schema of TRIAL_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/speed-trials",
    operationId: "listSpeedTrials",
    summary: "List speed trials",
    page: TrialPageSchema,
    filters: {
      bitId: "Of this bit.",
      routerId: "In this router.",
    },
  });

  readRoute(app, doors, {
    ...READ,
    path: "/v1/speed-trials/:speedTrialId",
    parameters: PARAMETERS,
    operationId: "getSpeedTrial",
    summary: "Read a speed trial",
  });

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/speed-trials",
      operationId: "createSpeedTrial",
      summary: "Enter what a bit did at one speed in one router",
      body: NewTrialSchema,
    },
    function* ({ body, request, at }) {
      const bit = yield* requireOne("/bitId", body.bitId, bits);
      const router = yield* requireOne("/routerId", body.routerId, routers);
      const policy = yield* shopPolicy();
      const usable = yield* usableRouter(router, at, policy);
      const { personId } = callerOf(request);
      const id = newId(trialKind.idPrefix);
      const { record, changes } = enterTrial(id, bit, usable, body, policy, personId, at);
      return { changes, answer: record };
    },
  );

  actRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/speed-trials/:speedTrialId/set-aside",
      parameters: PARAMETERS,
      operationId: "setSpeedTrialAside",
      summary: "Say that a trial no longer counts, such as after a new bearing",
      body: SetAsideSchema,
    },
    (current, { body: { reason }, at }) => {
      const { record, changes } = setTrialAside(current, reason, at);
      return { changes, answer: record };
    },
  );
}
