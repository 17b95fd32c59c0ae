import { describe, expect, it } from "vitest";
import { showArea, showFeed, showForce, showLength, showMass, showRotation, showSpeed } from "./show.ts";

describe("a length", () => {
  it.each([
    [88.9, "88.9 mm", "3-1/2 in"],
    [12.7, "12.7 mm", "1/2 in"],
    [6.35, "6.35 mm", "1/4 in"],
    [19, "19 mm", "3/4 in"],
    [19.05, "19.05 mm", "3/4 in"],
    [107.95, "107.95 mm", "4-1/4 in"],
    [76.2, "76.2 mm", "3 in"],
    [25.4 / 64, "0.397 mm", "1/64 in"],
    [12, "12 mm", "0.472 in"],
    [0.0045, "0.0045 mm", "0.000177 in"],
    [0, "0 mm", "0 in"],
    [1200, "1200 mm", "47.244 in"],
    [-12.7, "-12.7 mm", "-1/2 in"],
  ])("of %d mm", (mm, metric, imperial) => {
    expect([showLength(mm, "metric"), showLength(mm, "imperial")]).toEqual([metric, imperial]);
  });
});

describe("a mass", () => {
  it.each([
    [340.1942775, "340.2 g", "12 oz"],
    [255, "255 g", "9 oz"],
    [453.59237, "453.6 g", "1 lb"],
    [453, "453 g", "1 lb"],
    [510.29141625, "510.3 g", "1 lb 2 oz"],
    [0.5, "0.5 g", "0.0176 oz"],
  ])("of %d g", (g, metric, imperial) => {
    expect([showMass(g, "metric"), showMass(g, "imperial")]).toEqual([metric, imperial]);
  });
});

describe("a speed", () => {
  // 125 mph = 55.88 m/s exactly (NIST SP 811 appendix B.8); 55.85751738 m/s is a 3.5 in rim at 12 000 rpm, 124.9497 mph.
  it.each([
    [55.88, "55.8 m/s", "125 mph"],
    [55.85751738, "55.8 m/s", "124.9 mph"],
    [56, "56 m/s", "125.2 mph"],
  ])("of %d m/s is cut down, never up", (mPerS, metric, imperial) => {
    expect([showSpeed(mPerS, "metric"), showSpeed(mPerS, "imperial")]).toEqual([metric, imperial]);
  });

  it.each([
    [12_000, "12,000 rpm"],
    [12_000.99, "12,000 rpm"],
    [11_999.9999, "11,999 rpm"],
    [999, "999 rpm"],
    [1_234_567, "1,234,567 rpm"],
    [0.4, "0 rpm"],
  ])("of %d rpm is cut down to whole turns", (rpm, text) => {
    expect(showRotation(rpm)).toBe(text);
  });
});

it("shows feed, area and force in both systems", () => {
  // 1 m/min = 3.2808 ft/min; 1 in² = 645.16 mm²; 1 lbf = 4.448 N (NIST SP 811 appendix B.8).
  expect([showFeed(4.8, "metric"), showFeed(4.8, "imperial")]).toEqual(["4.8 m/min", "15.7 ft/min"]);
  expect([showArea(100, "metric"), showArea(100, "imperial")]).toEqual(["100 mm²", "0.155 in²"]);
  expect([showForce(33.703602, "metric"), showForce(33.703602, "imperial")]).toEqual(["33.7 N", "7.6 lbf"]);
});
