// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, StreamOptions } from "../operation.ts";
import type { NotModified } from "../read.ts";
import type { GetApiDescriptionResponse, Liveness, Readiness, Version } from "./types.gen.ts";

/** For operators and their monitors. */
export interface HealthResource {
  /**
   * Tell whether the process answers
   *
   * `GET /livez`
   */
  getLiveness(options?: CallOptions): Answer<Liveness>;

  /**
   * Tell whether the service can do its work
   *
   * `GET /readyz`
   */
  getReadiness(options?: CallOptions): Answer<Readiness>;

  /**
   * Tell which version is running
   *
   * `GET /version`
   */
  getVersion(options?: CallOptions): Answer<Version>;

  /**
   * Read the counters, in the text format of Prometheus
   *
   * `GET /metrics`
   */
  getMetrics(options: CallOptions & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * Read the counters, in the text format of Prometheus
   *
   * `GET /metrics`
   */
  getMetrics(options?: CallOptions): Answer<string>;

  /**
   * Read this description
   *
   * `GET /openapi.json`
   */
  getApiDescription(options?: CallOptions): Answer<GetApiDescriptionResponse>;

  /**
   * Get the client that fits this service
   *
   * An npm package: `npm install` takes this address. The same until the service is upgraded. A service that runs from its sources, unbuilt, has none.
   *
   * `GET /client.tgz`
   */
  getClientPackage(options: ConditionalOptions): Answer<Blob | NotModified>;
  /**
   * Get the client that fits this service
   *
   * An npm package: `npm install` takes this address. The same until the service is upgraded. A service that runs from its sources, unbuilt, has none.
   *
   * `GET /client.tgz`
   */
  getClientPackage(options: CallOptions & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * Get the client that fits this service
   *
   * An npm package: `npm install` takes this address. The same until the service is upgraded. A service that runs from its sources, unbuilt, has none.
   *
   * `GET /client.tgz`
   */
  getClientPackage(options?: CallOptions): Answer<Blob>;
}

export function healthOf(caller: Caller): HealthResource {
  return {
    getLiveness: (options) =>
      caller.send({ path: "/livez" }, options),
    getReadiness: (options) =>
      caller.send({ path: "/readyz" }, options),
    getVersion: (options) =>
      caller.send({ path: "/version" }, options),
    getMetrics: (options?: AnyOptions) =>
      caller.send<never>({ path: "/metrics", answers: ["text/plain"] }, options),
    getApiDescription: (options) =>
      caller.send({ path: "/openapi.json" }, options),
    getClientPackage: (options?: AnyOptions) =>
      caller.send<never>({ path: "/client.tgz", answers: ["application/gzip"] }, options),
  };
}
