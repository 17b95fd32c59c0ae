import { expect, test } from "vitest";
import { behindTheService, numbersTo } from "../../testing/behind-the-service.ts";
import { newBit, STAMP } from "../../testing/new-bit.ts";
import { describeOnPostgresql } from "../../testing/one-engine.ts";
import { openOwnStore } from "../../testing/own-store.ts";
import { preparedFor } from "../store/postgresql/answer.ts";
import type { Match } from "../store/values.ts";
import { bits } from "./reads.ts";

/** A rack of so many bits, whose words and number SQL gives the n-th, in an order on the disk. */
async function rackOf(count: number, words: string, number: string, order: string) {
  const { store, file } = await openOwnStore();
  await store.commit({ stamp: STAMP, changes: newBit("bit_0").changes });
  await behindTheService({ file }, async ({ columns, run }) => {
    const others = (await columns("bits")).map(({ name }) => name).filter((name) => !OWN.includes(name));
    await run(
      `${numbersTo(count)} INSERT INTO bits (${[...OWN, ...others].join()})
       SELECT ${number}, n + 1, 'bit_' || n, ${words}, '', ${others.map((name) => `original.${name}`).join()}
       FROM numbers, bits AS original ORDER BY ${order}`,
    );
    await run("DELETE FROM bits WHERE id = 'bit_0'");
    await run("VACUUM ANALYZE bits");
  });
  return { store, file };
}

/** What each bit of the rack has of its own. */
const OWN = ["number", "shop_number", "id", "words", "facets"];

const words = (...each: string[]): Match => ({ words: each, anyOfFacets: [] });

/** In runs of 700 with gaps of a hundred thousand numbers and the last ones far away, so that windows of every level begin and end among them. */
const SPREAD = 3000;
const AFAR = 2900;
const numberOf = (n: number) => n + 1 + 100_000 * Math.floor(n / 700) + (n > AFAR ? 40_000_000 : 0);
const NUMBER = `n + 1 + 100000 * (n / 700) + CASE WHEN n > ${AFAR} THEN 40000000 ELSE 0 END`;

describeOnPostgresql("the index of words", () => {
  test("finds page by page exactly what has the words, in order, however frequent, however far apart, and wherever it is on the disk", async () => {
    const { store } = await rackOf(
      SPREAD,
      "'all ' || CASE WHEN n % 3 = 0 THEN 'third ' ELSE '' END || CASE WHEN n % 97 = 0 THEN 'seldom ' ELSE '' END || CASE WHEN n > 2000 THEN 'late' ELSE 'early' END",
      NUMBER,
      "n DESC",
    );
    const searches: readonly [match: Match, has: (n: number) => boolean][] = [
      [words("all"), () => true],
      [words("third"), (n) => n % 3 === 0],
      [words("seldom"), (n) => n % 97 === 0],
      [words("late"), (n) => n > 2000],
      [words("third", "late"), (n) => n % 3 === 0 && n > 2000],
      [words("early", "late"), () => false],
      [words("nowhere"), () => false],
      // More conditions than stand by themselves, and an exclusion.
      [words("all", "all", "third", "all", "late", "all"), (n) => n % 3 === 0 && n > 2000],
      [
        { ...words("all", "third"), except: [words("seldom"), words("late", "all")] },
        (n) => n % 3 === 0 && n % 97 !== 0 && n <= 2000,
      ],
      [{ words: [], anyOfWords: [["seldom", "late"]], anyOfFacets: [] }, (n) => n % 97 === 0 || n > 2000],
    ];
    const numbers = Array.from({ length: SPREAD }, (_, index) => index + 1);
    for (const [match, has] of searches) {
      const expected = numbers.filter(has).map(numberOf);
      for (const most of [1, 51, 400]) {
        for (const after of [0, 5, 1023, 1024, 100_699, 100_700, 250_000, numberOf(AFAR), numberOf(SPREAD)]) {
          const found = await store.answer(bits.search(after, most, { match }));
          const what = `${JSON.stringify(match)}, ${most} after ${after}`;
          expect(
            found.map(({ number }) => number),
            what,
          ).toEqual(expected.filter((number) => number > after).slice(0, most));
        }
      }
    }
  });

  test("reads no more rows than some pages have, in a large rack too, where many bits have a word or none has both", async () => {
    const { file } = await rackOf(
      20_000,
      "'all ' || CASE WHEN n > 15000 THEN 'late' ELSE 'early' END || CASE WHEN n % 2 = 0 THEN ' even' ELSE ' odd' END",
      "n + 1",
      "n",
    );
    const most = 51;
    for (const match of [words("all"), words("late"), words("late", "even"), words("early", "late")]) {
      const step = bits.search(0, most, { match }).next().value;
      if (!("query" in step)) throw new Error("nothing is asked");
      const { text, values } = preparedFor(step.query);
      const [row] = await behindTheService({ file }, ({ rows }) =>
        rows(
          `EXPLAIN (ANALYZE, FORMAT JSON) ${text}`,
          values.map((read) => read(step.values)),
        ),
      );
      const [{ Plan: plan }] = JSON.parse(String(row?.["QUERY PLAN"]));
      expect(rowsRead(plan), JSON.stringify(match)).toBeLessThan(15 * most);
    }
  });
});

/** What is read from the table, in all turns. */
function rowsRead(plan: {
  readonly "Relation Name"?: string;
  readonly "Actual Rows": number;
  readonly "Rows Removed by Filter"?: number;
  readonly "Actual Loops": number;
  readonly Plans?: readonly Parameters<typeof rowsRead>[0][];
}): number {
  const own = plan["Actual Rows"] + (plan["Rows Removed by Filter"] ?? 0);
  const inside = (plan.Plans ?? []).reduce((sum, each) => sum + rowsRead(each), 0);
  return inside + (plan["Relation Name"] === "bits" ? own * plan["Actual Loops"] : 0);
}
