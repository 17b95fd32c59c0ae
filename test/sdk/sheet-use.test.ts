import { type SheetOptions, verifySheet } from "@rimwise/client";
import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import { AT, EXPECTED, KEYS, list, NOW_S, SHEET, sheet } from "./signed-sheets.ts";

const verdictOn = (jws: string, options: Partial<SheetOptions> = {}) =>
  verifySheet(jws, { keys: KEYS, at: AT, status: list(), expected: EXPECTED, ...options });
const reasonsOf = async (jws: string, options: Partial<SheetOptions> = {}) =>
  (await verdictOn(jws, options)).reasons;
/** What the types forbid, and a program without types sends. */
const untyped = (value: unknown) => JSON.parse(JSON.stringify(value) ?? "null");

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("a good sheet is no leave for something else", () => {
  it.each([
    [{ bitId: "bit_2" }, "other-bit"],
    [{ routerId: "router_2" }, "other-router"],
    [{ mark: 2.5 }, "other-mark"],
    [{ mark: "B" }, "other-mark"],
    [{ mark: null }, "other-mark"],
    [{ woodId: "white-oak" }, "other-wood"],
    [{ mounting: "handheld" as const }, "other-mounting"],
  ])("such as %j", async (change, reason) => {
    const expected = { ...EXPECTED, ...change };
    expect(await verdictOn(sheet(), { expected })).toMatchObject({ isValid: false, reasons: [reason] });
  });

  it("and all that differs is named", async () => {
    const expected = { bitId: "a", routerId: "b", mark: 1, woodId: "c", mounting: "handheld" } as const;
    const all = ["other-bit", "other-router", "other-mark", "other-wood", "other-mounting"];
    expect(await reasonsOf(sheet(), { expected })).toEqual(all);
  });

  it("nor without saying what for", async () => {
    const { expected: _, ...options } = { keys: KEYS, at: AT, status: list(), expected: EXPECTED };
    expect((await verifySheet(sheet(), untyped({ ...options, at: undefined }))).isValid).toBe(false);
    expect(await reasonsOf(sheet(), { expected: untyped({}) })).toContain("other-bit");
    expect(await verifySheet(sheet(), Object.assign(untyped(options), { at: AT }))).toMatchObject({
      isValid: false,
      reasons: ["expected-missing"],
    });
  });

  it("nor for another person than it names, or for nobody", async () => {
    const named = sheet({ setting: { ...SHEET.setting, personIds: ["person_1", "person_2"] } });
    const by = (personId?: string) => reasonsOf(named, { expected: { ...EXPECTED, personId } });
    expect(await by("person_2")).toEqual([]);
    expect(await by("person_3")).toEqual(["other-person"]);
    expect(await by()).toEqual(["other-person"]);
    expect(await reasonsOf(sheet(), { expected: { ...EXPECTED, personId: "person_3" } })).toEqual([]);
  });

  it("is one for each wood it names, and for a router without a dial", async () => {
    expect(await reasonsOf(sheet(), { expected: { ...EXPECTED, woodId: "hard-maple" } })).toEqual([]);
    const plain = sheet({ setting: { ...SHEET.setting, mark: null } });
    expect(await reasonsOf(plain, { expected: { ...EXPECTED, mark: null } })).toEqual([]);
    expect(await reasonsOf(plain)).toEqual(["other-mark"]);
  });
});

describe("clocks that differ", () => {
  const early = () => sheet({ nbf: NOW_S + 30 });
  const late = () => sheet({ exp: NOW_S - 30 });
  const old = () => list({ exp: NOW_S - 30 });

  it("are allowed for as far as is said", async () => {
    for (const [clockLeewayS, isGood] of [
      [29, false],
      [31, true],
    ] as const) {
      expect((await verdictOn(early(), { clockLeewayS })).isValid).toBe(isGood);
      expect((await verdictOn(late(), { clockLeewayS })).isValid).toBe(isGood);
      expect((await verdictOn(sheet(), { clockLeewayS, status: old() })).isValid).toBe(isGood);
    }
  });

  it.each([undefined, -1, 301, Number.NaN, Number.POSITIVE_INFINITY])(
    "are not by %s",
    async (clockLeewayS) => {
      expect(await reasonsOf(late(), { clockLeewayS })).toEqual(["expired"]);
    },
  );
});

describe("a platform without its own cryptography, as a page over plain HTTP has none", () => {
  const without = () => vi.stubGlobal("crypto", { getRandomValues: crypto.getRandomValues.bind(crypto) });
  const unknowing = () => {
    const refuse = () => Promise.reject(new DOMException("Ed25519", "NotSupportedError"));
    vi.stubGlobal("crypto", { subtle: { importKey: refuse } });
  };

  it.each([
    ["no cryptography", without],
    ["no Ed25519", unknowing],
  ])("checks all the same with %s", async (_what, stub) => {
    const good = sheet();
    const forged = `${good.slice(0, good.lastIndexOf(".") + 5)}AAAA${good.slice(good.lastIndexOf(".") + 9)}`;
    stub();
    expect(await verdictOn(good)).toMatchObject({ isValid: true });
    expect(await reasonsOf(forged)).toEqual(["signature-wrong"]);
    expect(await reasonsOf(good, { expected: { ...EXPECTED, bitId: "bit_2" } })).toEqual(["other-bit"]);
    const half = { keys: KEYS.keys.map((key) => ({ ...key, x: "AAAA" })) };
    expect(await reasonsOf(good, { keys: half })).toEqual(["signature-wrong"]);
  });

  it("says that it cannot if what it needs cannot be loaded", async () => {
    const good = sheet();
    const status = list();
    vi.stubGlobal("DecompressionStream", undefined);
    Reflect.deleteProperty(globalThis, "DecompressionStream");
    expect(await reasonsOf(good, { status })).toEqual(["cannot-verify-here"]);
  });
});

it("nothing is thrown, whatever is given", () =>
  fc.assert(
    fc.asyncProperty(fc.anything(), fc.anything(), async (jws, options) => {
      const { isValid, reasons } = await Reflect.apply(verifySheet, undefined, [jws, options]);
      expect([isValid, reasons.length > 0]).toEqual([false, true]);
    }),
  ));
