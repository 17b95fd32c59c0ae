import type { FastifyRequest } from "fastify";
import { callerOf, mayDo } from "../access/caller.ts";
import type { AskedBy } from "./compute.ts";

/** Who asks for a plan, as far as it decides what the plan may name. */
export function askedBy(request: FastifyRequest, at: string): AskedBy {
  return { at, mayReadBits: mayDo(callerOf(request), "bits:read") };
}
