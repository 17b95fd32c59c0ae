import { collectDefaultMetrics, Histogram, Registry } from "prom-client";
import type { App } from "../http/app-type.ts";

/** Upper bounds in seconds: a plan takes milliseconds, a time-out 10 s. */
const BUCKETS_S = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];

/** Times every request under its route's pattern, so that ids never become labels. */
export function measureRequests(app: App): Registry {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const durations = new Histogram({
    name: "http_request_duration_seconds",
    help: "Time from the first byte of a request to the end of its answer.",
    labelNames: ["method", "route", "status"],
    buckets: BUCKETS_S,
    registers: [registry],
  });
  const known = new Map<string, Histogram.Internal<string>>();
  app.addHook("onResponse", (request, reply, done) => {
    const route = request.is404 ? "none" : (request.routeOptions.url ?? "none");
    const { method } = request;
    const { statusCode: status } = reply;
    const name = `${method} ${route} ${status}`;
    const duration = known.get(name) ?? durations.labels({ method, route, status });
    known.set(name, duration);
    duration.observe(reply.elapsedTime / 1000);
    done();
  });
  return registry;
}
