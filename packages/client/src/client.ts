import { resourcesOf } from "./generated/resources.ts";
import { type ClientOptions, settingsFrom } from "./options.ts";
import { createCaller } from "./request.ts";

/** One resource a property, one operation a method: `client.bits.create(…)` is the operation `createBit`. */
export type Client = ReturnType<typeof resourcesOf>;

/**
 * A client of one shop's service. Nothing is sent until a method is called. Throws a TypeError for a base URL or key
 * that could never work. `const bit = await createClient({ baseUrl: "http://127.0.0.1:8080", key }).bits.get(bitId)`
 */
export function createClient(options: ClientOptions): Client {
  return resourcesOf(createCaller(settingsFrom(options)));
}
