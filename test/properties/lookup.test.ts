import { type Bit, bitFaults, bitSizes, bitWords, FORMS, readQuery, wordsIn } from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bits } from "./arbitraries.ts";
import { formsOf } from "./form-arbitraries.ts";

const RUNS = { numRuns: 1000 };

/** A size given in sixty-fourths of an inch, or in tenths of a millimetre, is this near to the bit's. */
const NEAR_MM = 0.4;

const everyBit: fc.Arbitrary<Bit> = fc
  .oneof(
    bits,
    fc.record({
      form: fc.oneof(...FORMS.map(formsOf)),
      shankDiameterMm: fc.constantFrom(6, 6.35, 8, 12, 12.7),
      wings: fc.integer({ min: 1, max: 12 }),
    }),
  )
  .filter((bit) => bitFaults(bit).length === 0);

/** What people type: words, numbers, signs, and anything at all. */
const texts = fc.oneof(
  fc.string({ unit: "binary", maxLength: 300 }),
  fc
    .array(
      fc.oneof(
        fc.constantFrom(
          "half",
          "quarter",
          "three",
          "an",
          "and",
          "of",
          "inch",
          "in",
          "mm",
          '"',
          "½",
          "⅞",
          "/",
        ),
        fc.constantFrom(
          "shank",
          "radius",
          "long",
          "dia",
          "Ø",
          "°",
          "flute",
          "-",
          ".",
          " ",
          "bit",
          "cove",
          "__proto__",
        ),
        fc.integer({ min: 0, max: 200 }).map(String),
        fc.double({ min: 0, max: 100, noNaN: true }).map(String),
      ),
      { maxLength: 14 },
    )
    .chain((parts) => fc.constantFrom("", " ").map((between) => parts.join(between))),
);

describe("what people type to find a bit", () => {
  it("is read whatever it is, and every size is one a bit may have", () => {
    fc.assert(
      fc.property(texts, (text) => {
        const { words, sizes } = readQuery(text);
        for (const { mm, alternativesMm } of sizes) {
          for (const each of [mm, ...(alternativesMm ?? [])]) {
            expect(each).toBeGreaterThan(0);
            expect(each).toBeLessThanOrEqual(250);
          }
          if (alternativesMm !== undefined) {
            expect(alternativesMm[0]).toBe(mm);
            expect(alternativesMm).toHaveLength(2);
          }
        }
        expect(wordsIn(words.join(" "))).toEqual(words);
      }),
      { numRuns: 5000 },
    );
  });

  it("keeps every word of a text without numbers", () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom("Cove", "big", "Façade", "the", "bits", "von", "Säge")),
        (parts) => {
          const text = parts.join(" ");
          expect(readQuery(text)).toEqual({ words: wordsIn(text), sizes: [] });
        },
      ),
      RUNS,
    );
  });

  it("finds a bit by any of its sizes, in inches or in millimetres, and its title", () => {
    fc.assert(
      fc.property(everyBit, fc.nat(), fc.constantFrom("mm", "fraction", "decimal"), (bit, at, system) => {
        const sizes = bitSizes(bit);
        const size = sizes[at % sizes.length];
        const title = FORMS.find(({ kind }) => kind === bit.form.kind)?.title ?? "";
        // Nobody gives a size under half a millimetre, and in sixty-fourths it would be none.
        if (size === undefined || size.mm < 0.5) return;
        const query = readQuery(`${written(size.mm, system)} ${title}`);
        const words = bitWords(bit);
        expect(query.words.filter((word) => !words.includes(word))).toEqual([]);
        expect(query.words.length).toBeGreaterThan(0);
        expect(query.sizes).toHaveLength(1);
        const readings = query.sizes.flatMap(({ mm, alternativesMm }) => alternativesMm ?? [mm]);
        expect(readings.some((mm) => Math.abs(mm - size.mm) <= NEAR_MM)).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  it("finds a bit by a dimension and its name, before or after it", () => {
    fc.assert(
      fc.property(everyBit, fc.nat(), fc.boolean(), (bit, at, isBefore) => {
        const sizes = bitSizes(bit);
        const size = sizes[at % sizes.length];
        if (size === undefined || size.mm < 0.5) return;
        const text = written(size.mm, "mm");
        const [read, ...others] = readQuery(isBefore ? `${size.role} ${text}` : `${text} ${size.role}`).sizes;
        expect(others).toEqual([]);
        expect(read?.role).toBe(size.role);
        expect(Math.abs((read?.mm ?? 0) - size.mm)).toBeLessThanOrEqual(NEAR_MM);
      }),
      RUNS,
    );
  });
});

/** A size as people write it. */
function written(mm: number, system: "mm" | "fraction" | "decimal"): string {
  if (system === "mm") return `${mm.toFixed(1)} mm`;
  if (system === "decimal") return `${(mm / 25.4).toFixed(3)} inch`;
  const parts = Math.round((mm / 25.4) * 64);
  const whole = Math.floor(parts / 64);
  const rest = parts % 64;
  if (rest === 0) return `${whole} in`;
  return `${whole === 0 ? "" : `${whole}-`}${rest}/64"`;
}
