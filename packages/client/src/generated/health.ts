// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller } from "../operation.ts";
import type {
  GetApiDescriptionResponse,
  GetLivenessResponse,
  GetMetricsResponse,
  GetReadinessResponse,
  GetVersionResponse,
} from "./types.gen.ts";

export function healthOf(caller: Caller) {
  return {
    /** Tell whether the process answers */
    getLiveness: (options?: CallOptions) =>
      caller.send<GetLivenessResponse>(
        { method: "GET", path: "/livez" },
        options,
      ),

    /** Tell whether the service can do its work */
    getReadiness: (options?: CallOptions) =>
      caller.send<GetReadinessResponse>(
        { method: "GET", path: "/readyz" },
        options,
      ),

    /** Tell which version is running */
    getVersion: (options?: CallOptions) =>
      caller.send<GetVersionResponse>(
        { method: "GET", path: "/version" },
        options,
      ),

    /** Read the counters, in the text format of Prometheus */
    getMetrics: (options?: CallOptions) =>
      caller.send<GetMetricsResponse>(
        { method: "GET", path: "/metrics", answers: ["text/plain"] },
        options,
      ),

    /** Read this description */
    getApiDescription: (options?: CallOptions) =>
      caller.send<GetApiDescriptionResponse>(
        { method: "GET", path: "/openapi.json" },
        options,
      ),
  };
}
