import Qty from "js-quantities";
import { describe, expect, it } from "vitest";
import { parseLength, parseMass, parseSpeed } from "../../packages/domain/src/quantity/parse.ts";
import * as units from "../../packages/domain/src/quantity/units.ts";

/** One of the first unit in the second, by the general-purpose library js-quantities. */
const by = (from: string, to: string) => new Qty(1, from).to(to).scalar;

describe("the factors are those of a general-purpose units library", () => {
  // js-quantities keeps some factors to fewer digits than their exact definition: the tolerance is relative.
  it.each([
    ["inch to mm", units.MM_PER_INCH, by("in", "mm"), 1e-12],
    ["foot to mm", units.MM_PER_FOOT, by("ft", "mm"), 1e-12],
    ["mph to m/s", units.M_PER_S_PER_MPH, by("mph", "m/s"), 1e-12],
    ["ounce to g", units.G_PER_OUNCE, by("oz", "g"), 1e-7],
    ["pound to g", units.G_PER_POUND, by("lb", "g"), 1e-12],
    ["pound-force to N", units.N_PER_POUND_FORCE, by("lbf", "N"), 1e-7],
    ["horsepower to W", units.W_PER_HORSEPOWER, by("hp", "W"), 1e-7],
    ["psi to Pa", units.PA_PER_PSI, by("psi", "Pa"), 1e-6],
    ["m to mm", units.MM_PER_M, by("m", "mm"), 1e-12],
    ["kg to g", units.G_PER_KG, by("kg", "g"), 1e-12],
    ["minute to s", units.SECONDS_PER_MINUTE, by("min", "s"), 1e-12],
  ])("%s", (_name, ours, theirs, tolerance) => {
    expect(Math.abs(ours / theirs - 1)).toBeLessThan(tolerance);
  });
});

describe("the factors are exact by definition", () => {
  // NIST SP 811 appendix B.8 and the 1959 yard and pound agreement; the last three derived from those.
  it.each([
    ["inch in mm", units.MM_PER_INCH, 25.4],
    ["foot in mm", units.MM_PER_FOOT, 304.8],
    ["mph in m/s", units.M_PER_S_PER_MPH, 0.44704],
    ["pound in g", units.G_PER_POUND, 453.59237],
    ["ounce in g", units.G_PER_OUNCE, 28.349523125],
    ["standard gravity in m/s²", units.STANDARD_GRAVITY_M_PER_S2, 9.80665],
    ["pound-force in N", units.N_PER_POUND_FORCE, 4.4482216152605],
    ["horsepower in W", units.W_PER_HORSEPOWER, 745.6998715822702],
    ["psi in Pa", units.PA_PER_PSI, 6894.757293168361],
  ])("%s", (_name, ours, exact) => {
    expect(Math.abs(ours / exact - 1)).toBeLessThan(1e-15);
  });

  it("16 ounces are a pound and 12 inches a foot", () => {
    expect(16 * units.G_PER_OUNCE).toBe(units.G_PER_POUND);
    expect(12 * units.MM_PER_INCH).toBeCloseTo(units.MM_PER_FOOT, 12);
  });
});

describe("text is read as the library reads it", () => {
  it.each(["3.5 in", "88.9 mm", "2 ft", "1.2 m", "8.89 cm"])("length %s", (text) => {
    const [scalar = "", unit = ""] = text.split(" ");
    const parsed = parseLength(text);
    expect(parsed.ok && parsed.mm).toBeCloseTo(new Qty(Number(scalar), unit).to("mm").scalar, 9);
  });

  it.each(["340 g", "2 lb", "0.25 kg"])("mass %s", (text) => {
    const [scalar = "", unit = ""] = text.split(" ");
    const parsed = parseMass(text);
    expect(parsed.ok && parsed.g).toBeCloseTo(new Qty(Number(scalar), unit).to("g").scalar, 6);
  });

  it.each(["125 mph", "56 m/s", "11000 ft/min", "200 km/h"])("speed %s", (text) => {
    const [scalar = "", unit = ""] = text.split(" ");
    const parsed = parseSpeed(text);
    expect(parsed.ok && parsed.mPerS).toBeCloseTo(new Qty(Number(scalar), unit).to("m/s").scalar, 9);
  });
});
