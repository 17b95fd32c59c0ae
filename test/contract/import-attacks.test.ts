import { describe, expect, test } from "vitest";
import { CSV, NDJSON, sendFile, straights } from "./import-files.ts";
import { openShop } from "./shop.ts";

const MEBIBYTE = 1024 * 1024;
const HEADER = straights(["First"]);

/** What a normal file of a thousand rows takes, beside which an attack of the same size or larger must be cheap. */
async function timed(act: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await act();
  return performance.now() - start;
}

const attacks: readonly [string, string, () => string][] = [
  ["a million rows of commas", CSV, () => HEADER + ",,,,,\r\n".repeat(1_000_000)],
  ["a million rows of commas and quotes", CSV, () => `${HEADER}${'"","",""\n'.repeat(1_000_000)}`],
  ["megabytes of empty lines", CSV, () => HEADER + "\n".repeat(30 * MEBIBYTE)],
  ["megabytes of empty lines before anything", CSV, () => "\n".repeat(30 * MEBIBYTE)],
  ["megabytes of empty lines", NDJSON, () => "\n".repeat(30 * MEBIBYTE)],
  ["megabytes of spaces and line ends", NDJSON, () => " \r\n".repeat(10 * MEBIBYTE)],
  ["rows of 65,000 cells", CSV, () => HEADER + `${"x,".repeat(32_000)}\n`.repeat(480)],
  [
    "rows of 65,000 empty cells behind a good one",
    CSV,
    () => HEADER + `x${",".repeat(65_000)}\n`.repeat(480),
  ],
  ["a first line that names 30,000 columns", CSV, () => `${"massg,".repeat(10_000)}\nx\n`],
];

describe("a file made to keep the service busy", () => {
  test.each(attacks)(
    "of %s (%s) is refused, says why, and holds up nobody",
    async (_what, type, make) => {
      const shop = await openShop();
      const file = make();
      let longestMs = 0;
      let last = performance.now();
      const beat = setInterval(() => {
        longestMs = Math.max(longestMs, performance.now() - last);
        last = performance.now();
      }, 1);
      const tookMs = await timed(async () => {
        const answer = await sendFile(shop, file, { type });
        expect(answer.status).toBe(422);
        expect(answer.body.report.isComplete).toBe(false);
        expect(answer.body.report.faults.at(-1).message).toMatch(/too many (empty rows|cells|rows)/);
      });
      clearInterval(beat);
      // Not a measure of speed: reading it whole takes minutes, or one turn of many seconds.
      expect(tookMs).toBeLessThan(10_000);
      expect(longestMs).toBeLessThan(8_000);
      expect((await shop.ask("GET", "/v1/bits")).body.data).toEqual([]);
    },
    60_000,
  );

  test("is none with the empty rows and cells that spreadsheets leave behind", async () => {
    const shop = await openShop();
    const rows = straights(["First", "Second"]).replaceAll("\r\n", `${",".repeat(250)}\r\n`);
    const answer = await sendFile(shop, rows + `${",".repeat(60)}\r\n`.repeat(3000));
    expect(answer.body).toMatchObject({ rows: 2, created: 2, isComplete: true });
  });
});
