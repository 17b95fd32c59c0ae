import Fastify from "fastify";
import { bitReads } from "./bits/reads.ts";
import { bitRoutes } from "./bits/routes.ts";
import { bitStandingRoutes } from "./bits/standing-routes.ts";
import { checkpointMaker } from "./checkpoints/make.ts";
import { checkpointReads } from "./checkpoints/reads.ts";
import { checkpointRegularly } from "./checkpoints/regularly.ts";
import { checkpointRoutes } from "./checkpoints/routes.ts";
import { colletRoutes } from "./collets/routes.ts";
import type { Config } from "./config.ts";
import { dialReadingRoutes } from "./dial-readings/routes.ts";
import { newBell, ringingAfter } from "./events/bell.ts";
import { proofRoutes } from "./events/proof-routes.ts";
import { eventReads } from "./events/reads.ts";
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
import { validateStrictly } from "./http/validation.ts";
import { writeThrough } from "./http/write.ts";
import { importRoutes } from "./imports/routes.ts";
import { inspectionRoutes } from "./inspections/routes.ts";
import { authenticateCallers, authorizeCallers } from "./keys/authenticate.ts";
import { keyReads } from "./keys/reads.ts";
import { keyRoutes } from "./keys/routes.ts";
import { loanReads } from "./loans/reads.ts";
import { loanRoutes } from "./loans/routes.ts";
import { meRoutes } from "./me/routes.ts";
import { type ApiDocument, describeApi } from "./openapi/document.ts";
import { documentRoutes } from "./openapi/routes.ts";
import { outlineRoutes } from "./outlines/routes.ts";
import { panelRoutes } from "./panels/routes.ts";
import { personRoutes } from "./people/routes.ts";
import { placeReads } from "./places/reads.ts";
import { placeRoutes } from "./places/routes.ts";
import { learnedReads } from "./plans/learned.ts";
import { planReads } from "./plans/reads.ts";
import { planRoutes } from "./plans/routes.ts";
import { policyRoutes } from "./policy/routes.ts";
import { answerProblems } from "./problems/answer.ts";
import { routerReads } from "./routers/reads.ts";
import { routerRoutes } from "./routers/routes.ts";
import { runOutRoutes } from "./run-out-readings/routes.ts";
import { sharpeningRoutes } from "./sharpenings/routes.ts";
import { signingRoutes } from "./signing/routes.ts";
import { openSigner } from "./signing/signer.ts";
import { speedTrialRoutes } from "./speed-trials/routes.ts";
import { stockReads } from "./stock/reads.ts";
import { stockRoutes } from "./stock/routes.ts";
import { SHOP_POLICY_ID } from "./shop-policy/schema.ts";
import type { Store } from "./store/open.ts";
import { recordReads } from "./store/record-reads.ts";
import { useRoutes } from "./uses/routes.ts";
import { woodReads } from "./woods/reads.ts";
import { woodRoutes } from "./woods/routes.ts";

export type AppParts = {
  readonly config: Config;
  /** Opened and closed by whoever builds the app. */
  readonly store: Store;
  readonly now?: () => Date;
  readonly logStream?: LogStream;
};

/** Builds the service: opens no port, reads no environment. The order of the lines is the order in which a request passes them. */
export async function buildApp(parts: AppParts): Promise<{ app: App; document: () => ApiDocument }> {
  const { config, store, now = () => new Date(), logStream } = parts;
  const app: App = Fastify(serverOptions(config, logStream));
  const keys = keyReads(store.database);
  const shopPolicies = recordReads(store.database, "shop-policy");
  const sources = {
    bits: bitReads(store.database),
    routers: routerReads(store.database),
    woods: woodReads(),
    learned: learnedReads(store.database),
    shopPolicy: async () => (await shopPolicies.find(SHOP_POLICY_ID))?.layer ?? {},
    now,
  };
  const people = recordReads(store.database, "person");
  const places = placeReads(store.database);
  const events = eventReads(store.database);
  const checkpoints = checkpointReads(store.database);
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
  bitRoutes(app, { reads: sources.bits, routers: sources.routers, places, write, answerOnce, now });
  bitStandingRoutes(app, { reads: sources.bits, write, now });
  importRoutes(app, {
    reads: recordReads(store.database, "import"),
    bits: sources.bits,
    places,
    write,
    now,
  });
  placeRoutes(app, { reads: places, bits: sources.bits, write, answerOnce, now });
  loanRoutes(app, {
    reads: loanReads(store.database),
    bits: sources.bits,
    routers: sources.routers,
    people,
    places,
    write,
    answerOnce,
    now,
  });
  outlineRoutes(app);
  routerRoutes(app, { reads: sources.routers, write, answerOnce, now });
  woodRoutes(app, { reads: sources.woods });
  policyRoutes(app);
  planRoutes(app, { reads: planReads(store.database), sources, answerOnce, now });
  panelRoutes(app, { sources });
  inspectionRoutes(app, {
    reads: recordReads(store.database, "inspection"),
    bits: sources.bits,
    answerOnce,
    now,
  });
  sharpeningRoutes(app, {
    reads: recordReads(store.database, "sharpening"),
    uses: recordReads(store.database, "use"),
    bits: sources.bits,
    answerOnce,
    now,
  });
  speedTrialRoutes(app, {
    reads: recordReads(store.database, "speed-trial"),
    sources,
    write,
    answerOnce,
    now,
  });
  const collets = recordReads(store.database, "collet");
  const { bits, routers, woods } = sources;
  dialReadingRoutes(app, { reads: recordReads(store.database, "dial-reading"), routers, answerOnce, now });
  colletRoutes(app, { reads: collets, routers, write, answerOnce, now });
  runOutRoutes(app, {
    reads: recordReads(store.database, "run-out-reading"),
    bits,
    routers,
    collets,
    answerOnce,
    now,
  });
  useRoutes(app, {
    reads: recordReads(store.database, "use"),
    bits,
    routers,
    collets,
    plans: planReads(store.database),
    woods,
    answerOnce,
    now,
  });
  stockRoutes(app, { reads: stockReads(store.database), now });
  personRoutes(app, { reads: people, keys, write, answerOnce, now });
  keyRoutes(app, { reads: keys, people, write, answerOnce, now });
  meRoutes(app);
  eventRoutes(app, { reads: events, keys, now });
  eventStreamRoutes(app, { reads: events, bell, isStillAllowed });
  checkpointRoutes(app, { reads: checkpoints, make: makeCheckpoint, answerOnce, now });
  proofRoutes(app, { events, checkpoints, verify: signer.verify });
  signingRoutes(app, { signer, makeCheckpoint, write, now });
  refuseOthers();
  return { app, document };
}
