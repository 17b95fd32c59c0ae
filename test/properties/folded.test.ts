import fc from "fast-check";
import { expect, test } from "vitest";
import { folded } from "../../services/shop/src/store/folded.ts";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { serverUnderTest } from "../../services/shop/testing/database-under-test.ts";
import { openInMemoryStore } from "../../services/shop/testing/in-memory-store.ts";
import { openOwnStore } from "../../services/shop/testing/own-store.ts";

/** What a database makes of texts that are compared. */
async function foldedInSql(texts: readonly string[]): Promise<readonly unknown[]> {
  if (serverUnderTest() === undefined) {
    const fold = openInMemoryStore().sqlite.prepare<[string], string>("SELECT folded(?)").pluck();
    return texts.map((text) => fold.get(text));
  }
  const rows = await behindTheService(await openOwnStore(), (database) =>
    database.rows(
      "SELECT folded(text) AS text FROM unnest($1::text[]) WITH ORDINALITY AS given (text, place) ORDER BY place",
      [texts],
    ),
  );
  return rows.map(({ text }) => text);
}

/** Letters of the languages that shops are named in, with capitals, marks and ligatures; a database keeps no U+0000. */
const letter = fc.oneof(
  fc.constantFrom(..."aAzZéÉöÖßẞİıΣςσÆæŒœǅǆﬁﬀŁłØøÞþÐðŸÿÑñ’-. 0½²Ⅳ№™"),
  fc.constantFrom("\u0301", "\u0308", "\u0327", "\u030a"),
  fc.integer({ min: 0x20, max: 0x24f }).map((code) => String.fromCodePoint(code)),
  fc.integer({ min: 0x370, max: 0x52f }).map((code) => String.fromCodePoint(code)),
  fc.integer({ min: 0x1e00, max: 0x1eff }).map((code) => String.fromCodePoint(code)),
  fc.integer({ min: 0x3040, max: 0x30ff }).map((code) => String.fromCodePoint(code)),
);
const text = fc.array(letter, { maxLength: 12 }).map((letters) => letters.join(""));

test("a text is compared in SQL as it is everywhere else", async () => {
  const texts = fc.sample(text, { numRuns: 5000, seed: 20_260_302 });
  expect(await foldedInSql(texts)).toEqual(texts.map(folded));
});
