import { describe, expect, it } from "vitest";
import type { Form } from "../bit/form/registry.ts";
import { bitSizes, bitWords } from "./bit-words.ts";
import { readQuery } from "./read-query.ts";

const bit = (form: Form) => ({ form, shankDiameterMm: 12.7, wings: 2 });
const STRAIGHT = bit({ kind: "straight", diameterMm: 19, cuttingLengthMm: 25 });
const ROUND_OVER = bit({ kind: "round-over", diameterMm: 38.1, radiusMm: 12.7 });
const PANEL = bit({
  kind: "panel-raising",
  diameterMm: 88.9,
  pilotDiameterMm: 19,
  profileHeightMm: 12,
  face: "ogee",
});
const CHAMFER = bit({ kind: "chamfer", diameterMm: 38, angleDeg: 45, pilotDiameterMm: 12.7 });
const V_GROOVE = bit({ kind: "v-groove", diameterMm: 19, angleDeg: 22.5 });
const LOCK_MITRE = bit({ kind: "lock-mitre", diameterMm: 70, cuttingLengthMm: 25, lockDepthMm: 2 });

// What the trade calls them: common practice.
describe("a bit answers to what the trade calls it", () => {
  it.each([
    ["two flute straight bit", STRAIGHT],
    ["dado", STRAIGHT],
    ["roundover", ROUND_OVER],
    ["round-over", ROUND_OVER],
    ["round over with bearing", ROUND_OVER],
    ["quarter round", ROUND_OVER],
    ["ovolo", ROUND_OVER],
    ["raised panel ogee", PANEL],
    ["panel raiser", PANEL],
    ["panel-raising", PANEL],
    ["45 degree chamfer", CHAMFER],
    ["bevel", CHAMFER],
    ["v groove", V_GROOVE],
    ["vgroove", V_GROOVE],
    ["22.5° v-groove", V_GROOVE],
    ["lock miter", LOCK_MITRE],
    ["rebate", bit({ kind: "rabbet", diameterMm: 35, cuttingLengthMm: 12.7, pilotDiameterMm: 12.7 })],
    ["pattern bit", bit({ kind: "flush-trim", diameterMm: 12.7, cuttingLengthMm: 25, bearing: "shank" })],
    ["ball nose", bit({ kind: "core-box", diameterMm: 19, cuttingLengthMm: 12 })],
  ])("%s", (text, found) => {
    const words = bitWords(found);
    expect(readQuery(text).words.filter((word) => !words.includes(word))).toEqual([]);
  });

  it("and not to what it is not", () => {
    expect(bitWords(STRAIGHT)).not.toContain("bearing");
    expect(bitWords(STRAIGHT)).not.toContain("3flute");
    expect(bitWords(PANEL)).not.toContain("bevel");
    expect(bitWords(CHAMFER)).not.toContain("22p5deg");
  });
});

describe("a bit's sizes", () => {
  it("are its diameter, its shank, the length of its edges, and its radius if it has one", () => {
    expect(bitSizes(STRAIGHT)).toEqual([
      { role: "diameter", mm: 19 },
      { role: "shank", mm: 12.7 },
      { role: "length", mm: 25 },
    ]);
    const radius = (form: Form) => bitSizes(bit(form)).find(({ role }) => role === "radius")?.mm;
    expect(bitSizes(ROUND_OVER).find(({ role }) => role === "diameter")?.mm).toBeCloseTo(38.1, 9);
    expect(bitSizes(ROUND_OVER).find(({ role }) => role === "length")?.mm).toBeCloseTo(12.7, 9);
    expect(radius({ kind: "round-over", diameterMm: 38.1, radiusMm: 12.7 })).toBe(12.7);
    expect(radius({ kind: "core-box", diameterMm: 19, cuttingLengthMm: 12 })).toBe(9.5);
    expect(radius({ kind: "v-groove", diameterMm: 19, angleDeg: 90 })).toBeUndefined();
  });
});
