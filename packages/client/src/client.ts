import type { Answer } from "./answer.ts";
import { type Resources, resourcesOf } from "./generated/resources.ts";
import type { AnyOptions, Operation } from "./operation.ts";
import { type ClientOptions, settingsFrom, withOptions } from "./options.ts";
import { NO_CONTENT } from "./read.ts";
import { createCaller } from "./request.ts";
import { requirePath } from "./url.ts";

/** A call that no method stands for. Whatever is no GET is sent with an Idempotency-Key. */
export type OtherRequest = Omit<Operation, "isQuestion" | "ids">;

/** One resource a property, one operation a method: `client.bits.create(…)` is the operation `createBit`. */
export interface Client extends Resources {
  /** The same client with these options instead; headers are added to the ones there are. */
  withOptions(options: Partial<ClientOptions>): Client;
  /**
   * Sends what there is no method for, such as an operation of a newer service, with the same retries and errors. Its path is the
   * API document's, with `pathParameters` for the names in it.
   */
  request<Result = unknown>(request: OtherRequest, options?: AnyOptions): Answer<Result>;
}

/**
 * A client of one shop's service. Nothing is sent until a method is called. Throws a TypeError for a base URL or key
 * that could never work. `const bit = await createClient({ baseUrl: "http://127.0.0.1:8080", key }).bits.get(bitId)`
 */
export function createClient(options: ClientOptions): Client {
  const caller = createCaller(settingsFrom(options));
  return {
    ...resourcesOf(caller),
    withOptions: (given) => createClient(withOptions(options, given)),
    request: (request, given) => {
      requirePath(request.path);
      return caller.send({ ...request, answers: request.answers ?? ["application/json", NO_CONTENT] }, given);
    },
  };
}
