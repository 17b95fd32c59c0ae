import { describe } from "vitest";
import { serverUnderTest } from "../postgresql/shop-database.ts";

/** Tests of what only SQLite has, such as its file. The reason stands in the report. */
export function describeOnSqlite(reason: string, tests: () => void): void {
  describe.skipIf(serverUnderTest() !== undefined)(`on SQLite alone, because ${reason}:`, tests);
}
