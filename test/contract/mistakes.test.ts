import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addRouter, lastSequence, made, planFor } from "./crib.ts";
import { sendFile } from "./import-files.ts";
import { openShop, type Shop } from "./shop.ts";

/** A 2 in straight bit, which weighs 9 oz (common practice). Typed as 9 g it would be cleared for a handheld router. */
const WIDE = {
  name: "Straight, 50.8 mm",
  form: { kind: "straight", diameterMm: 50.8, cuttingLengthMm: 31.75 },
  shankDiameterMm: 12.7,
  wings: 2,
};
const MESSAGE = "Its outline gives about 268 g. Did you mean 9 oz (255 g)?";

let shop: Shop;
beforeAll(async () => {
  shop = await openShop({}, undefined, afterAll);
});

/** What a request is refused with; nothing may have changed. */
async function refusal(method: "POST" | "PATCH", path: string, body: object) {
  const before = await lastSequence(shop);
  const headers = method === "PATCH" ? { "If-Match": "*" } : {};
  const answer = await shop.ask(method, path, { body, headers });
  expect(answer.status, answer.text).toBe(422);
  expect(await lastSequence(shop)).toBe(before);
  return answer.body.errors.map(({ pointer, message }: { pointer: string; message: string }) => [
    pointer,
    message,
  ]);
}

describe("a mass that the outline cannot have is refused", () => {
  test("in a request for a plan", async () => {
    const { name: _, ...bit } = { ...WIDE, massG: 9 };
    const router = await addRouter(shop);
    const cut = { kind: "groove", depthMm: 6, edges: [{ lengthMm: 460, grain: "long" }] };
    const body = { ...planFor(router, router), bit, cut, mounting: "handheld" };
    expect(await refusal("POST", "/v1/plans/preview", body)).toEqual([["/bit/massG", MESSAGE]]);
  });

  test("of a new bit, of a change, and of a weighing after a sharpening", async () => {
    expect(await refusal("POST", "/v1/bits", { ...WIDE, massG: 9 })).toEqual([["/massG", MESSAGE]]);
    const { id } = await made(shop, "/v1/bits", { ...WIDE, massG: 255 });
    expect(await refusal("PATCH", `/v1/bits/${id}`, { massG: 9 })).toEqual([["/massG", MESSAGE]]);
    expect(await refusal("POST", `/v1/bits/${id}/sharpenings`, { massG: 9 })).toEqual([["/massG", MESSAGE]]);
  });

  test("in a file", async () => {
    const row = "Wide,straight,50.8,31.75,12.7,2,9";
    const file = `name,kind,diameterMm,cuttingLengthMm,shankDiameterMm,wings,massG\n${row}\n`;
    const { status, body } = await sendFile(shop, file);
    expect(status).toBe(422);
    expect(body.report.faults).toMatchObject([{ line: 2, column: "massG", message: MESSAGE }]);
  });
});

describe("a length that no workshop measures is refused", () => {
  const RUN_OUT =
    "No indicator of a workshop tells a run-out this small from none. Did you mean 0.002 in (0.051 mm)?";

  test("as a run-out, of a bit, in a router and at a trial", async () => {
    const [bit, router] = [await addBit(shop), await addRouter(shop)];
    const pair = { bitId: bit.id, routerId: router.id };
    expect(await refusal("PATCH", `/v1/bits/${bit.id}`, { runOutMm: 0.002 })).toEqual([
      ["/runOutMm", RUN_OUT],
    ]);
    const reading = { ...pair, runOutMm: 0.002, instrument: "Dial indicator" };
    expect(await refusal("POST", "/v1/run-out-readings", reading)).toEqual([["/runOutMm", RUN_OUT]]);
    const trial = { ...pair, mark: 1, outcome: "ran-free", runOutMm: 0.002 };
    expect(await refusal("POST", "/v1/speed-trials", trial)).toEqual([["/runOutMm", RUN_OUT]]);
  });

  test("as a smallest usable diameter in inches", async () => {
    expect(await refusal("POST", "/v1/bits", { ...WIDE, smallestUsableDiameterMm: 1.9 })).toEqual([
      [
        "/smallestUsableDiameterMm",
        "A bit is never sharpened this far, so it would never be taken out of use. Did you mean 1.9 in (48.26 mm)?",
      ],
    ]);
  });

  test("as what one sharpening took off", async () => {
    const { id } = await made(shop, "/v1/bits", WIDE);
    expect(await refusal("POST", `/v1/bits/${id}/sharpenings`, { diameterMm: 5.05 })).toEqual([
      ["/diameterMm", "One sharpening does not take this much off. Measure it again."],
    ]);
    await made(shop, `/v1/bits/${id}/sharpenings`, { diameterMm: 50.5 });
  });

  test("as stock that a panel bit would cut through", async () => {
    const [bit, router] = [await addBit(shop), await addRouter(shop)];
    const cut = { kind: "panel", thicknessMm: 9, edges: [{ lengthMm: 460, grain: "long" }] };
    expect(await refusal("POST", "/v1/plans/preview", planFor(bit, router, { cut }))).toEqual([
      ["/cut/thicknessMm", "At this height the bit cuts through the whole thickness and leaves no tongue."],
    ]);
  });
});

test("a trial at a speed that the router does not run at is refused", async () => {
  const [bit, router] = [await addBit(shop), await addRouter(shop)];
  const trial = { bitId: bit.id, routerId: router.id, outcome: "ran-free" };
  // 10,000 to 22,000 rpm and a tenth on both sides.
  for (const rpm of [8000, 24_500]) {
    expect(await refusal("POST", "/v1/speed-trials", { ...trial, rpm })).toEqual([
      ["/rpm", "This router does not run at this speed. Read it again."],
    ]);
  }
  await made(shop, "/v1/speed-trials", { ...trial, rpm: 9000 });
});
