import { expect } from "vitest";
import { behindTheService, count } from "./behind-the-service.ts";
import { serverUnderTest } from "./database-under-test.ts";

/** Expects the pages of a database to be sound, and each event of its history to follow the one before. */
export async function expectWhole(file: string): Promise<void> {
  if (serverUnderTest() === undefined) {
    const found = await behindTheService({ file }, ({ rows }) => rows("PRAGMA integrity_check"));
    expect(found).toEqual([{ integrity_check: "ok" }]);
  }
  const broken = `events AS later JOIN events AS earlier ON earlier.sequence = later.sequence - 1
    WHERE later.previous_hash <> earlier.hash`;
  expect(await count({ file }, broken)).toBe(0);
}
