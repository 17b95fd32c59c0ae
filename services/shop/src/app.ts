import Fastify from "fastify";
import { bitReads } from "./bits/reads.ts";
import { bitRoutes } from "./bits/routes.ts";
import type { Config } from "./config.ts";
import { eventReads } from "./events/reads.ts";
import { eventRoutes } from "./events/routes.ts";
import { measureRequests } from "./health/metrics.ts";
import { healthRoutes } from "./health/routes.ts";
import { answersOnce } from "./http/answer-once.ts";
import type { App } from "./http/app-type.ts";
import { refuseWhileClosing } from "./http/closing.ts";
import { answerConditionally } from "./http/conditional.ts";
import { allowOrigins } from "./http/cross-origin.ts";
import { addFixedHeaders } from "./http/fixed-headers.ts";
import { requireScopes } from "./http/operation.ts";
import { refuseOtherMethods } from "./http/other-methods.ts";
import { refuseUnderPressure } from "./http/pressure.ts";
import { limitRates } from "./http/rate-limit.ts";
import { identifyRequests } from "./http/request-identity.ts";
import { type LogStream, serverOptions } from "./http/server-options.ts";
import { validateStrictly } from "./http/validation.ts";
import { writeThrough } from "./http/write.ts";
import { authenticateCallers, authorizeCallers } from "./keys/authenticate.ts";
import { keyReads } from "./keys/reads.ts";
import { keyRoutes } from "./keys/routes.ts";
import { type ApiDocument, describeApi } from "./openapi/document.ts";
import { documentRoutes } from "./openapi/routes.ts";
import { outlineRoutes } from "./outlines/routes.ts";
import { panelRoutes } from "./panels/routes.ts";
import { planReads } from "./plans/reads.ts";
import { planRoutes } from "./plans/routes.ts";
import { policyRoutes } from "./policy/routes.ts";
import { answerProblems } from "./problems/answer.ts";
import { routerReads } from "./routers/reads.ts";
import { routerRoutes } from "./routers/routes.ts";
import type { Store } from "./store/open.ts";
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
  const sources = {
    bits: bitReads(store.database),
    routers: routerReads(store.database),
    woods: woodReads(),
  };
  const write = writeThrough(store.commit);
  const answerOnce = answersOnce(store.findAnswer, write, now);

  app.removeContentTypeParser("text/plain");
  answerProblems(app);
  validateStrictly(app);
  identifyRequests(app);
  addFixedHeaders(app);
  const metrics = measureRequests(app);
  await allowOrigins(app, config.corsOrigins);
  const isClosing = refuseWhileClosing(app);
  await refuseUnderPressure(app, config.busyAfterMs);
  authenticateCallers(app, keys);
  await limitRates(app, config.rateLimitPerMinute);
  authorizeCallers(app);
  answerConditionally(app);
  requireScopes(app);
  const refuseOthers = refuseOtherMethods(app);
  const document = await describeApi(app);

  healthRoutes(app, { health: store.health, isClosing, metrics });
  documentRoutes(app, { document });
  bitRoutes(app, { reads: sources.bits, write, answerOnce, now });
  outlineRoutes(app);
  routerRoutes(app, { reads: sources.routers, write, answerOnce, now });
  woodRoutes(app, { reads: sources.woods });
  policyRoutes(app);
  planRoutes(app, { reads: planReads(store.database), sources, answerOnce, now });
  panelRoutes(app, { sources });
  keyRoutes(app, { reads: keys, write, answerOnce, now });
  eventRoutes(app, { reads: eventReads(store.database) });
  refuseOthers();
  return { app, document };
}
