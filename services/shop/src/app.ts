import Fastify from "fastify";
import { checkpointMaker } from "./checkpoints/make.ts";
import { checkpointRegularly } from "./checkpoints/regularly.ts";
import { checkpointRoutes } from "./checkpoints/routes.ts";
import type { Config } from "./config.ts";
import { newBell, ringingAfter } from "./events/bell.ts";
import { proofRoutes } from "./events/proof-routes.ts";
import { eventRoutes } from "./events/routes.ts";
import { eventStreamRoutes } from "./events/stream-routes.ts";
import { measureRequests } from "./health/metrics.ts";
import { healthRoutes } from "./health/routes.ts";
import { answersOnce } from "./http/answer-once.ts";
import type { App } from "./http/app-type.ts";
import { takeReasons } from "./http/change-reason.ts";
import { refuseWhileClosing } from "./http/closing.ts";
import { answerConditionally } from "./http/conditional.ts";
import { allowOrigins } from "./http/cross-origin.ts";
import { addFixedHeaders } from "./http/fixed-headers.ts";
import { requireScopes } from "./http/operation.ts";
import { refuseOtherMethods } from "./http/other-methods.ts";
import { refuseUnderPressure } from "./http/pressure.ts";
import { limitRates } from "./http/rate-limit.ts";
import { identifyRequests } from "./http/request-identity.ts";
import { serializeBySchema } from "./http/serialization.ts";
import { type LogStream, serverOptions } from "./http/server-options.ts";
import { limitTime } from "./http/time-limit.ts";
import { validateStrictly } from "./http/validation.ts";
import { writeThrough } from "./http/write.ts";
import { authenticateCallers, authorizeCallers } from "./keys/authenticate.ts";
import { type ApiDocument, describeApi } from "./openapi/document.ts";
import { documentRoutes } from "./openapi/routes.ts";
import { pageRoutes } from "./pages/routes.ts";
import { answerProblems } from "./problems/answer.ts";
import { courseRooms } from "./rooms/courses.ts";
import { planningRooms } from "./rooms/planning.ts";
import { rackRooms } from "./rooms/rack.ts";
import { allReads, planSources } from "./rooms/reads.ts";
import { signingRoutes } from "./signing/routes.ts";
import { openSigner } from "./signing/signer.ts";
import type { Store } from "./store/open.ts";

export type AppParts = {
  readonly config: Config;
  /** Opened and closed by whoever builds the app. */
  readonly store: Store;
  readonly now?: () => Date;
  readonly logStream?: LogStream;
};

const ANSWER_TIME_LIMIT_MS = 10_000;

/** Builds the service: opens no port, reads no environment. The order of the lines is the order in which a request passes them. */
export async function buildApp(parts: AppParts): Promise<{ app: App; document: () => ApiDocument }> {
  const { config, store, now = () => new Date(), logStream } = parts;
  const app: App = Fastify(serverOptions(config, logStream));
  const all = allReads(store.database);
  const { keys, people, events, checkpoints } = all;
  const signer = await openSigner(config.signingKeys, now);
  const makeCheckpoint = checkpointMaker(events, signer);
  const bell = newBell();
  const ring = checkpointRegularly(app, {
    events,
    checkpoints,
    make: makeCheckpoint,
    commit: ringingAfter(store.commit, bell),
    now,
  });
  const write = writeThrough(ringingAfter(store.commit, bell, { ring }));
  const answerOnce = answersOnce(store.findAnswer, write, now);

  app.removeContentTypeParser("text/plain");
  answerProblems(app);
  validateStrictly(app);
  serializeBySchema(app);
  identifyRequests(app);
  addFixedHeaders(app);
  const metrics = measureRequests(app);
  await allowOrigins(app, config.corsOrigins);
  limitTime(app, ANSWER_TIME_LIMIT_MS);
  const isClosing = refuseWhileClosing(app);
  await refuseUnderPressure(app, config.busyAfterMs);
  const isStillAllowed = authenticateCallers(app, { keys, people, now });
  await limitRates(app, config.rateLimitPerMinute);
  authorizeCallers(app);
  takeReasons(app);
  answerConditionally(app);
  requireScopes(app);
  const refuseOthers = refuseOtherMethods(app);
  const document = await describeApi(app);

  healthRoutes(app, { health: store.health, isClosing, metrics });
  documentRoutes(app, { document });
  const context = { all, sources: planSources(all, now), write, answerOnce, now };
  rackRooms(app, context, config.publicUrl);
  planningRooms(app, context);
  courseRooms(app, context, signer, config.publicUrl);
  eventRoutes(app, { reads: events, keys, now });
  eventStreamRoutes(app, { reads: events, bell, isStillAllowed });
  checkpointRoutes(app, { reads: checkpoints, make: makeCheckpoint, answerOnce, now });
  proofRoutes(app, { events, checkpoints, verify: signer.verify });
  signingRoutes(app, { signer, makeCheckpoint, write, now });
  await pageRoutes(app);
  refuseOthers();
  return { app, document };
}
