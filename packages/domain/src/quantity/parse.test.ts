import { describe, expect, it } from "vitest";
import { parseLength, parseMass, parseRotation, parseSpeed } from "./parse.ts";

describe("a length", () => {
  // Exact by the inch of 25.4 mm and the foot of 304.8 mm (NIST SP 811 appendix B.8).
  it.each([
    ["3-1/2 in", 88.9],
    ['3 1/2"', 88.9],
    ["3½ in", 88.9],
    ["3-½″", 88.9],
    ["3.5 IN.", 88.9],
    ["  88.9   mm ", 88.9],
    ["88.9mm", 88.9],
    ["0.5 in", 12.7],
    [".5 inch", 12.7],
    ["1/2 inches", 12.7],
    ["1/2-in", 12.7],
    ["3-1/2-inch", 88.9],
    ["¼”", 6.35],
    ["¾ in", 19.05],
    ["⅛ in", 3.175],
    ["7/2 in", 88.9],
    ["3‑1/2 in", 88.9],
    ["8.89 cm", 88.9],
    ["1.2 m", 1200],
    ["1,200 mm", 1200],
    ["2 ft", 609.6],
    ["2 ft 6 in", 762],
    ["2' 6-1/2\"", 774.7],
    ["2′6″", 762],
    ["0 mm", 0],
  ])("reads %j", (text, mm) => {
    const parsed = parseLength(text);
    expect(parsed.ok && parsed.mm).toBeCloseTo(mm, 9);
  });

  it.each([
    "",
    "in",
    "three inches",
    "1/0 in",
    "3-7/2 in",
    "--3 mm",
    "-3 mm",
    "- 3 mm",
    "+3 mm",
    "1e999 mm",
    "1e3 mm",
    "88,9 mm",
    "0,500 in",
    "1,00 mm",
    "3..5 mm",
    "3. mm",
    "1/2/3 in",
    "3 1/2",
    "22",
    "12 oz",
    "3 mm 2 mm",
    "3 in 2 ft",
    "2 ft 15 in",
    "1.5 ft 3 in",
    "3 mm junk",
    "0x10 mm",
    "NaN mm",
    "Infinity mm",
    "٣ mm",
    "3 constructor",
    `${"9".repeat(400)} mm`,
  ])("refuses %j and says what it takes", (text) => {
    const parsed = parseLength(text);
    expect(parsed.ok).toBe(false);
    if (parsed.ok) return;
    expect(parsed.fault).toMatchObject({ pointer: "", code: "not-a-quantity" });
    const { units, examples, given } = parsed.fault.values;
    expect(units).toEqual(["mm", "cm", "m", "in", "ft"]);
    expect(examples.every((example) => parseLength(example).ok)).toBe(true);
    expect(text.startsWith(given)).toBe(true);
    expect(given.length).toBeLessThanOrEqual(40);
  });

  it.each([
    ["3/8 in", 9.525],
    ["7/64 in", 2.778125],
    ["3-5/16 in", 84.1375],
    ["5/8 in", 15.875],
    ["2.2 cm", 22],
    ["1.1 m", 1100],
  ])("reads %j exactly, to the last digit", (text, mm) => {
    expect(parseLength(text)).toEqual({ ok: true, mm });
  });

  it("takes a bare number only in a unit the caller names", () => {
    expect(parseLength("1/2").ok).toBe(false);
    expect(parseLength("1/2", "in")).toEqual({ ok: true, mm: 12.7 });
    expect(parseLength("88.9", "mm")).toEqual({ ok: true, mm: 88.9 });
    expect(parseLength("1/2 in", "mm")).toEqual({ ok: true, mm: 12.7 });
  });
});

describe("a mass", () => {
  // Exact by the pound of 453.59237 g (1959 yard and pound agreement).
  it.each([
    ["12 oz", 340.1942775],
    ["340 g", 340],
    ["1 lb", 453.59237],
    ["1 lb 2 oz", 510.29141625],
    ["1lb 2oz", 510.29141625],
    ["2 LBS", 907.18474],
    ["¼ kg", 250],
  ])("reads %j", (text, g) => {
    const parsed = parseMass(text);
    expect(parsed.ok && parsed.g).toBeCloseTo(g, 9);
  });

  it.each(["12", "12 in", "1 oz 2 lb", "1 lb 16 oz", "-1 g"])("refuses %j", (text) => {
    expect(parseMass(text)).toMatchObject({ ok: false, fault: { code: "not-a-quantity" } });
  });
});

describe("a speed", () => {
  // 125 mph = 55.88 m/s = 11 000 ft/min exactly (NIST SP 811 appendix B.8).
  it.each([
    ["125 mph", 55.88],
    ["56 m/s", 56],
    ["11,000 ft/min", 55.88],
    ["201.168 km/h", 55.88],
  ])("reads %j", (text, mPerS) => {
    const parsed = parseSpeed(text);
    expect(parsed.ok && parsed.mPerS).toBeCloseTo(mPerS, 9);
  });

  it.each(["125", "125 rpm", "mph"])("refuses %j", (text) => {
    expect(parseSpeed(text)).toMatchObject({ ok: false, fault: { code: "not-a-quantity" } });
  });
});

describe("a rotational speed", () => {
  it.each(["22,000 rpm", "22000 RPM", "22000 r/min", "22000.0 rpm"])("reads %j", (text) => {
    expect(parseRotation(text)).toEqual({ ok: true, rpm: 22_000 });
  });

  it("takes a bare number only if rpm is the default", () => {
    expect(parseRotation("22000").ok).toBe(false);
    expect(parseRotation("22,000", "rpm")).toEqual({ ok: true, rpm: 22_000 });
  });

  it.each(["22k rpm", "2,2000 rpm", "-1 rpm", "22 mph"])("refuses %j", (text) => {
    expect(parseRotation(text)).toMatchObject({ ok: false, fault: { code: "not-a-quantity" } });
  });
});
