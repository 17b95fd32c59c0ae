import { strictestPolicy } from "@rimwise/domain";
import Type from "typebox";
import { BitPath } from "../bits/path.ts";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { requireOne, unknownRecord } from "../http/named-records.ts";
import { idFilter, listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { changedMeanwhile, decidedAnew, stampOf, type Write } from "../http/write.ts";
import { callerOf } from "../keys/caller.ts";
import { loadBit, loadRouter, type Sources } from "../plans/gather.ts";
import { notValid } from "../problems/problem.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import { enterTrial, setTrialAside } from "./decide.ts";
import { proposedTrial, TrialProposalSchema } from "./proposal.ts";
import { NewTrialSchema, SetAsideSchema, TRIAL_SCHEMAS, TrialPageSchema, TrialSchema } from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"speed-trial">;
  readonly sources: Sources;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

const TrialPath = Type.Object({ trialId: Type.String({ description: "Id of a speed trial." }) });
const NextQuery = Type.Object(
  { routerId: Type.String({ minLength: 1, maxLength: 100, description: "The router to try it in." }) },
  { additionalProperties: false },
);

export function speedTrialRoutes(app: App, { reads, sources, write, answerOnce, now }: Parts): void {
  for (const schema of [...TRIAL_SCHEMAS, TrialProposalSchema]) app.addSchema(schema);
  const common = { scope: "trials:read", tag: "trials" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/speed-trials",
      operationId: "listTrials",
      summary: "List speed trials",
      page: TrialPageSchema,
      filters: {
        bitId: idFilter("Of this bit."),
        routerId: idFilter("In this router."),
      },
    },
    (afterId, most, { bitId, routerId }) => reads.page(afterId, most, { bitId, routerId }),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/speed-trials/:trialId",
      operationId: "getTrial",
      summary: "Read a speed trial",
      record: TrialSchema,
      noun: "speed trial",
      parameter: "trialId",
    },
    reads.find,
  );

  app.get(
    "/v1/bits/:bitId/speed-trials/next",
    {
      config: { scope: "trials:read", operation: "act" },
      schema: {
        operationId: "proposeTrial",
        tags: ["trials"],
        summary: "The next speed to try, rising in steps from the slowest and never over the ceiling",
        params: BitPath,
        querystring: NextQuery,
        response: { 200: ref(TrialProposalSchema) },
      },
    },
    async (request) => {
      const { bitId } = request.params;
      const bit = requireFound("bit", bitId, await loadBit(bitId, sources));
      const router = await loadRouter(request.query.routerId, sources);
      if (router === undefined) throw notValid([unknownRecord("/routerId", "router", "query")]);
      return proposedTrial(bit, router, strictestPolicy(await sources.shopPolicy()));
    },
  );

  app.post(
    "/v1/speed-trials",
    {
      config: { scope: "trials:write", operation: "create" },
      schema: {
        operationId: "createTrial",
        tags: ["trials"],
        summary: "Enter what a bit did at one speed in one router",
        body: ref(NewTrialSchema),
        response: { 201: ref(TrialSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { body } = request;
        const bit = await requireOne("/bitId", "bit", body.bitId, sources.bits);
        const router = await requireOne("/routerId", "router", body.routerId, sources.routers);
        const stamp = stampOf(request, now());
        const usable = await sources.routers.usable(router, stamp.at);
        const { personId } = callerOf(request);
        const policy = strictestPolicy(await sources.shopPolicy());
        const id = newId("trial");
        const { record, change } = enterTrial(id, bit, usable, body, policy, personId, stamp.at);
        const headers = { Location: `/v1/speed-trials/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [change], headers, body: record };
      }),
  );

  app.post(
    "/v1/speed-trials/:trialId/set-aside",
    {
      config: { scope: "trials:write", operation: "act" },
      schema: {
        operationId: "setTrialAside",
        tags: ["trials"],
        summary: "Say that a trial no longer counts, such as after a new bearing",
        params: TrialPath,
        body: ref(SetAsideSchema),
        response: { 200: ref(TrialSchema) },
      },
    },
    (request, reply) =>
      decidedAnew(async () => {
        const { trialId } = request.params;
        const current = requireFound("speed trial", trialId, await reads.find(trialId));
        const stamp = stampOf(request, now());
        const { record, change } = setTrialAside(current, request.body.because, stamp.at);
        await write({ stamp, changes: [change] }, changedMeanwhile);
        reply.header("ETag", etagOf(record.version));
        return record;
      }),
  );
}
