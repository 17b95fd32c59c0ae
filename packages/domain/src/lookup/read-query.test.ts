import { describe, expect, it } from "vitest";
import { type QuerySize, readQuery } from "./read-query.ts";

// What people type: common practice. One inch is 25.4 mm exactly (NIST SP 811).
const sized = (role: QuerySize["role"], mm: number): QuerySize => ({ role, mm });
const either = (role: QuerySize["role"], mm: number): QuerySize => ({
  role,
  mm,
  alternativesMm: [mm, Number((mm * 25.4).toFixed(6))],
});

describe("what people type to find a bit", () => {
  it.each<[string, readonly string[], readonly QuerySize[]]>([
    ["3 1/2 panel", ["panel"], [sized("any", 88.9)]],
    ['3-1/2" panel', ["panel"], [sized("any", 88.9)]],
    ["3½ in panel", ["panel"], [sized("any", 88.9)]],
    ["88.9 panel", ["panel"], [sized("any", 88.9)]],
    ["half inch shank cove", ["cove"], [sized("shank", 12.7)]],
    ["quarter inch round over", ["round", "over"], [sized("any", 6.35)]],
    ["1/2 shank", [], [sized("shank", 12.7)]],
    ["12 mm straight", ["straight"], [sized("any", 12)]],
    ["8mm shank", [], [sized("shank", 8)]],
    ["two inch straight", ["straight"], [sized("any", 50.8)]],
    ["cove 1/4 radius", ["cove"], [sized("radius", 6.35)]],
    ["shank 1/2 radius 1/4", [], [sized("shank", 12.7), sized("radius", 6.35)]],
    ["1/2 shank 1/4 radius", [], [sized("shank", 12.7), sized("radius", 6.35)]],
    ["1/2-inch ogee", ["ogee"], [sized("any", 12.7)]],
    ["2.5cm surfacing", ["surfacing"], [sized("any", 25)]],
    ["Ø12 straight", ["straight"], [sized("diameter", 12)]],
    ["diameter of 19 mm", [], [sized("diameter", 19)]],
    ["25 mm cutting length", [], [sized("length", 25)]],
    ["1 in long", [], [sized("length", 25.4)]],
    ["1 3/16 dia", [], [sized("diameter", 30.1625)]],
    ["10 millimetres", [], [sized("any", 10)]],
    ["10 millimeter", [], [sized("any", 10)]],
    ["3 inches wide", ["wide"], [sized("any", 76.2)]],
  ])("%s", (text, words, sizes) => {
    expect(readQuery(text)).toEqual({ words, sizes });
  });

  it.each<[string, number]>([
    ["half an inch", 12.7],
    ["a quarter inch", 6.35],
    ["three quarter", 19.05],
    ["three quarters of an inch", 19.05],
    ["five eighths", 15.875],
    ["three sixteenths", 4.7625],
    ["an inch and a half", 38.1],
    ["inch and a quarter", 31.75],
    ["2 inches and a half", 63.5],
    ["two and a half inches", 63.5],
    ["one and three quarter inch", 44.45],
    ["half inch", 12.7],
    ["an eighth of an inch", 3.175],
    ["one inch", 25.4],
    ["three in", 76.2],
    ["four inch", 101.6],
    ["five inches", 127],
    ["six mm", 6],
    ["seven mm", 7],
    ["eight mm", 8],
    ["nine mm", 9],
    ["ten mm", 10],
    ["eleven mm", 11],
    ["twelve mm", 12],
    ["seven eighths", 22.225],
    ["two halves inch", 25.4],
    ["one sixteenth inch", 1.5875],
  ])("spelt out: %s", (text, mm) => {
    expect(readQuery(text)).toEqual({ words: [], sizes: [{ role: "any", mm }] });
  });

  it("a bare number may be millimetres or inches, if a bit may have either", () => {
    expect(readQuery("3").sizes).toEqual([either("any", 3)]);
    expect(readQuery("2.5 panel").sizes).toEqual([either("any", 2.5)]);
    expect(readQuery(".5").sizes).toEqual([either("any", 0.5)]);
    expect(readQuery("5").sizes).toEqual([either("any", 5)]);
    expect(readQuery("5.04").sizes).toEqual([sized("any", 5.04)]);
    expect(readQuery("12").sizes).toEqual([sized("any", 12)]);
    expect(readQuery("0.25").sizes).toEqual([sized("any", 6.35)]);
    expect(readQuery("0.5 shank").sizes).toEqual([sized("shank", 12.7)]);
    expect(readQuery("6 shank").sizes).toEqual([sized("shank", 6)]);
    expect(readQuery("2 r").sizes).toEqual([either("radius", 2)]);
    expect(readQuery("3 radius").sizes).toEqual([sized("radius", 3)]);
  });

  it.each([
    ["0.34", 8.636],
    ["0.35 mm", 0.35],
    ["250 mm", 250],
    ["250.1 mm", undefined],
    ["2.5 mm shank", 2.5],
    ["21 mm shank", 21],
    ["21.1 mm shank", undefined],
    ["65 mm radius", 65],
    ["65.1 mm radius", undefined],
    ["0.35 mm radius", 0.35],
    ["0.35 mm dia", 0.35],
    ["130 mm dia", 130],
    ["131 mm dia", undefined],
    ["0.35 mm long", 0.35],
    ["250 mm long", 250],
    ["251 mm long", undefined],
  ])("no bit has a size outside what may be: %s", (text, mm) => {
    expect(readQuery(text).sizes[0]?.mm).toBe(mm);
  });

  it("flutes and angles become words of their own", () => {
    expect(readQuery("2 flute straight")).toEqual({ words: ["2flute", "straight"], sizes: [] });
    expect(readQuery("three wings")).toEqual({ words: ["3flute"], sizes: [] });
    expect(readQuery("45° chamfer")).toEqual({ words: ["45deg", "chamfer"], sizes: [] });
    expect(readQuery("22.5 degrees")).toEqual({ words: ["22p5deg"], sizes: [] });
  });

  it("a number that reads as no size stays a word", () => {
    expect(readQuery("half round")).toEqual({ words: ["half", "round"], sizes: [] });
    expect(readQuery("two sided")).toEqual({ words: ["two", "sided"], sizes: [] });
    expect(readQuery("500")).toEqual({ words: ["500"], sizes: [] });
    expect(readQuery("5/0")).toEqual({ words: ["5", "0"], sizes: [] });
    expect(readQuery("3A b12")).toEqual({ words: ["3a", "b12"], sizes: [] });
  });

  it("a mixed number too large for its dimension falls apart into two", () => {
    expect(readQuery("16 1/2 shank").sizes).toEqual([sized("any", 16), sized("shank", 12.7)]);
  });

  it("improper parts do not mix", () => {
    expect(readQuery("3 4/4").sizes).toEqual([either("any", 3), sized("any", 25.4)]);
  });

  it("text beyond two hundred characters is not looked at", () => {
    expect(readQuery(`${"a".repeat(196)} rabbet`).words).toEqual(["a".repeat(196), "rab"]);
  });
});
