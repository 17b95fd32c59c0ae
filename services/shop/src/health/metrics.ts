import { collectDefaultMetrics, Gauge, Histogram, Registry } from "prom-client";
import type { ObserverOf } from "../http/answer-again.ts";
import type { App } from "../http/app-type.ts";
import type { Measure } from "../store/store.ts";

/** Upper bounds in seconds: a plan takes milliseconds, a time-out 10 s. */
const BUCKETS_S = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];

/** Shows what there is to measure of the database, as it is when somebody looks. */
export function measureStore(registry: Registry, measures: readonly Measure[]): void {
  for (const { name, help, values } of measures) {
    const labelNames = Object.keys(values()[0]?.labels ?? {});
    const gauge = new Gauge({
      name,
      help,
      labelNames,
      registers: [registry],
      collect: () => {
        gauge.reset();
        // What has no label is 0 then, which would say that something was measured.
        if (labelNames.length === 0) gauge.remove({});
        for (const { labels, value } of values()) gauge.set(labels, value);
      },
    });
  }
}

/** Times every request under its route's pattern, so that ids never become labels. */
export function measureRequests(app: App): { readonly registry: Registry; readonly observerOf: ObserverOf } {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const durations = new Histogram({
    name: "http_request_duration_seconds",
    help: "Time from the first byte of a request to the end of its answer.",
    labelNames: ["method", "route", "status"],
    buckets: BUCKETS_S,
    registers: [registry],
  });
  const known = new Map<string, (elapsedMs: number) => void>();
  const observerOf: ObserverOf = (method, route, status) => {
    const name = `${method} ${route} ${status}`;
    const before = known.get(name);
    if (before !== undefined) return before;
    const duration = durations.labels({ method, route, status });
    const observe = (elapsedMs: number) => duration.observe(elapsedMs / 1000);
    known.set(name, observe);
    return observe;
  };
  app.addHook("onResponse", ({ method, routeOptions }, { statusCode, elapsedTime }, done) => {
    observerOf(method, routeOptions.url ?? "none", statusCode)(elapsedTime);
    done();
  });
  return { registry, observerOf };
}
