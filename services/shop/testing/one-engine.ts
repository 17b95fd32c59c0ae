import { describe } from "vitest";
import { serverUnderTest } from "./database-under-test.ts";

/** Tests of what only SQLite has, such as its file. The reason stands in the report. */
export function describeOnSqlite(reason: string, tests: () => void): void {
  describe.skipIf(serverUnderTest() !== undefined)(`on SQLite alone, because ${reason}:`, tests);
}

/** Tests of the PostgreSQL engine itself, on the server under test; none of them runs without one. */
export function describeOnPostgresql(about: string, tests: (server: string) => void): void {
  const server = serverUnderTest();
  describe.skipIf(server === undefined)(about, () => {
    if (server !== undefined) tests(server);
  });
}
