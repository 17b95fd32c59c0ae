import { describe } from "vitest";
import { serverUnderTest } from "./shop-database.ts";

/** Tests of what only PostgreSQL has. They run with `pnpm test:postgresql`. */
export function describeOnPostgresql(about: string, tests: (server: string) => void): void {
  const server = serverUnderTest();
  describe.skipIf(server === undefined)(`on PostgreSQL, ${about}`, () => tests(server ?? ""));
}
