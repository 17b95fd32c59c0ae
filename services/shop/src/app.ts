import Fastify from "fastify";
import { checkpointMaker } from "./checkpoints/make.ts";
import { checkpointRegularly } from "./checkpoints/regularly.ts";
import { clientPackageRoutes } from "./client-package/routes.ts";
import type { Config } from "./config.ts";
import { measureRequests, measureStore } from "./health/metrics.ts";
import { healthRoutes } from "./health/routes.ts";
import { answerAgain } from "./http/answer-again.ts";
import { answersOnce } from "./http/answer-once.ts";
import { answerProblems } from "./http/answer-problems.ts";
import { answersReads } from "./http/answer-read.ts";
import type { App } from "./http/app-type.ts";
import { takeReasons } from "./http/change-reason.ts";
import { refuseWhileClosing } from "./http/closing.ts";
import { compileAtFirstUse } from "./http/compile-at-first-use.ts";
import { compressAnswers } from "./http/compression.ts";
import { answerConditionally } from "./http/conditional.ts";
import { allowOrigins } from "./http/cross-origin.ts";
import { announceDeprecations } from "./http/deprecation.ts";
import { continueWhenWanted } from "./http/expect-continue.ts";
import { addFixedHeaders } from "./http/fixed-headers.ts";
import type { LogStream } from "./http/log-lines.ts";
import { readJsonBodies } from "./http/nesting.ts";
import { requireScopes } from "./http/operation.ts";
import { answerOtherMethods } from "./http/other-methods.ts";
import { takePreferences } from "./http/prefer.ts";
import { prefixPaths } from "./http/prefix-paths.ts";
import { refuseUnderPressure } from "./http/pressure.ts";
import { takeQueryLists } from "./http/query-lists.ts";
import { limitRates } from "./http/rate-limit.ts";
import { identifyRequests } from "./http/request-identity.ts";
import { serverOptions } from "./http/server-options.ts";
import { takeText } from "./http/text.ts";
import { limitTime } from "./http/time-limit.ts";
import { writeThrough } from "./http/write.ts";
import { authenticateCallers, authorizeCallers } from "./keys/authenticate.ts";
import { type ApiDocument, describeApi } from "./openapi/document.ts";
import { documentRoutes } from "./openapi/routes.ts";
import { pageRoutes } from "./pages/routes.ts";
import { backupRooms } from "./rooms/backups.ts";
import { courseRooms } from "./rooms/courses.ts";
import { historyRooms } from "./rooms/history.ts";
import { KINDS } from "./rooms/kinds.ts";
import { pictureRooms } from "./rooms/pictures.ts";
import { planningRooms } from "./rooms/planning.ts";
import { printingRooms } from "./rooms/printing.ts";
import { rackRooms } from "./rooms/rack.ts";
import { signedSoFar } from "./rooms/signed.ts";
import { openSigner } from "./signing/start.ts";
import type { Store } from "./store/store.ts";

export type AppParts = {
  readonly config: Config;
  /** Opened and closed by whoever builds the app. */
  readonly store: Store;
  readonly now?: () => Date;
  readonly logStream?: LogStream;
  /** Path of the client's package. Default: the one that was built with the service. */
  readonly clientPackage?: string;
};

export type BuiltApp = {
  readonly app: App;
  /** The API description, once the app is ready. */
  readonly document: () => ApiDocument;
  /** Compiles every schema that a route validates or writes with; throws at one that is broken. Once the app is ready. */
  readonly compileAll: () => void;
};

const ANSWER_TIME_LIMIT_MS = 10_000;

/** Builds the service: opens no port, reads no environment. The order of the lines is the order in which a request passes them. */
export async function buildApp(parts: AppParts): Promise<BuiltApp> {
  const { config, store, now = () => new Date(), logStream } = parts;
  const app: App = Fastify(serverOptions(config, logStream));
  const { answer, commit, bell, findAnswer, leases } = store;
  const signed = await answer(signedSoFar());
  const { signer, warning } = await openSigner({ answer, commit, settings: config, signed, now });
  if (warning !== undefined) app.log.warn(warning);
  const makeCheckpoint = checkpointMaker(answer, signer);
  checkpointRegularly(app, { answer, commit, bell, leases, make: makeCheckpoint, now });
  const write = writeThrough(commit);

  app.removeContentTypeParser("text/plain");
  answerProblems(app);
  readJsonBodies(app);
  const { compileAll, validatorOf } = compileAtFirstUse(app);
  const answerOnce = answersOnce(findAnswer, write, now);
  identifyRequests(app);
  addFixedHeaders(app);
  announceDeprecations(app);
  prefixPaths(app, config.publicUrl);
  const { registry, observerOf } = measureRequests(app);
  measureStore(registry, store.measures);
  await allowOrigins(app, config.corsOrigins);
  limitTime(app, ANSWER_TIME_LIMIT_MS);
  const isClosing = refuseWhileClosing(app);
  await refuseUnderPressure(app, config.busyAfterMs);
  const { isStillAllowed, recallCaller } = authenticateCallers(app, {
    answer,
    mark: store.mark,
    hearSteps: store.hearSteps,
    now,
  });
  const countKey = limitRates(app, config, store.exchangeCounts);
  authorizeCallers(app);
  takeReasons(app);
  answerConditionally(app);
  takePreferences(app);
  await compressAnswers(app);
  requireScopes(app);
  continueWhenWanted(app);
  takeText(app);
  takeQueryLists(app);
  const { mark } = store;
  const { trustedProxies } = config;
  const noteRepeat = answerAgain(app, {
    mark,
    recallCaller,
    countKey,
    observerOf,
    isClosing,
    trustedProxies,
  });
  const answerRead = answersReads(noteRepeat);
  const doors = { answer, write, leases, answerOnce, answerRead, now, validatorOf };
  const answerOthers = answerOtherMethods(app);
  const document = await describeApi(app, KINDS);

  healthRoutes(app, { health: store.health, isClosing, metrics: registry });
  documentRoutes(app, { document });
  clientPackageRoutes(app, parts.clientPackage);
  rackRooms(app, doors, config.publicUrl);
  planningRooms(app, doors);
  courseRooms(app, doors, { signer, mark: store.mark, place: config });
  historyRooms(app, doors, {
    bell,
    isStillAllowed,
    signer,
    makeCheckpoint,
    keptPlaces: { signingKeys: config.signingKeys, sentTo: config.checkpointsSentTo },
  });
  backupRooms(app, doors, {
    copyTo: store.copyTo,
    kinds: KINDS,
    settings: config.backups,
    keySettings: config,
  });
  pictureRooms(app, doors, signer);
  printingRooms(app, doors, config);
  await pageRoutes(app);
  answerOthers();
  return { app, document, compileAll };
}
