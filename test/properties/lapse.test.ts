import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openShop, type Shop } from "../contract/shop.ts";
import { DOUBTFUL, HARMLESS, openStage, planned, stateOf } from "./happenings.ts";

/** Of the doubtful ones, those that leave this plan as it is. */
const ALTERS_NOTHING: readonly string[] = [
  "a touch-up",
  "a weighing",
  "a run-out in the record",
  "a sharpening",
  "chatter",
];

describe("an approved setting", () => {
  let shop: Shop;
  beforeAll(async () => {
    shop = await openShop({}, undefined, (release) => afterAll(release));
  });

  test("stays in force through everything that does not alter its result", async () => {
    await fc.assert(
      fc.asyncProperty(fc.shuffledSubarray([...HARMLESS], { minLength: 4 }), async (happenings) => {
        const stage = await openStage(shop);
        for (const { name, run } of happenings) {
          await run(stage);
          expect(await stateOf(stage), name).toBe("issued");
        }
      }),
      { numRuns: 8 },
    );
  });

  test("lapses in the very moment when its plan changes, and at no other", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.shuffledSubarray([...HARMLESS, ...DOUBTFUL], { minLength: 1, maxLength: 6 }),
        async (happenings) => {
          const stage = await openStage(shop);
          const before = await planned(stage);
          for (const { name, run } of happenings) {
            await run(stage);
            const isSame = JSON.stringify(await planned(stage)) === JSON.stringify(before);
            expect(await stateOf(stage), name).toBe(isSame ? "issued" : "lapsed");
            if (!isSame) return;
          }
        },
      ),
      { numRuns: 40 },
    );
  }, 120_000);

  test.each(DOUBTFUL.map(({ name, run }) => [name, run] as const))("after %s", async (name, run) => {
    const stage = await openStage(shop);
    const before = await planned(stage);
    await run(stage);
    const isSame = JSON.stringify(await planned(stage)) === JSON.stringify(before);
    expect(isSame).toBe(ALTERS_NOTHING.includes(name));
    expect(await stateOf(stage)).toBe(isSame ? "issued" : "lapsed");
  });
});
