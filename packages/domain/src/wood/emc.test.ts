import { describe, expect, it } from "vitest";
import { DomainError } from "../quantity/fault.ts";
import { equilibriumMoisturePercent } from "./emc.ts";

/** 30, 70 and 100 °F of the printed table. */
const celsius = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9;

describe("equilibrium moisture content", () => {
  // Wood Handbook Table 4-2, p. 4-4, as quoted by pages that credit it. The equation gives 17.95; the table prints 17.9.
  it.each([
    [70, 5, 1.3],
    [70, 30, 6.2],
    [70, 50, 9.2],
    [70, 75, 14.4],
    [70, 85, 17.9],
    [70, 95, 23.9],
    [30, 75, 14.9],
    [30, 95, 24.3],
    [100, 50, 8.7],
  ])("at %d °F and %d %% meets the printed table, %d", (fahrenheit, humidity, want) => {
    expect(Math.abs(equilibriumMoisturePercent(celsius(fahrenheit), humidity) - want)).toBeLessThan(0.06);
  });

  // The 70 °F row from 5 to 95 % by fives, from memory.
  it("meets the whole row for 70 °F", () => {
    const row = [
      1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11, 12, 13.1, 14.4, 16, 17.9, 20.5, 23.9,
    ];
    for (const [index, want] of row.entries()) {
      const got = equilibriumMoisturePercent(celsius(70), 5 * (index + 1));
      expect(Math.abs(got - want), `${5 * (index + 1)} %`).toBeLessThan(0.06);
    }
  });

  // Eq. (4-5), °C set, computed outside this project with mpmath at 30 digits.
  it.each([
    [celsius(70), 5, 1.2983, 4],
    [celsius(70), 30, 6.1696, 3],
    [celsius(70), 50, 9.2423, 4],
    [celsius(70), 75, 14.406, 4],
    [celsius(70), 85, 17.9517, 4],
    [celsius(70), 95, 23.8913, 4],
    [celsius(30), 75, 14.9144, 4],
    [celsius(30), 95, 24.3322, 4],
    [celsius(100), 50, 8.6777, 4],
    [20, 35, 6.963231, 6],
    [20, 40, 7.722395, 6],
    [20, 50, 9.271141, 6],
    [20, 65, 11.996267, 6],
    [20, 80, 16.037127, 6],
    [25, 50, 9.131547, 6],
    [20, 0, 0, 6],
    [20, 100, 28.838286, 6],
    [21.1, 30, 6.169755, 6],
    [21.1, 60, 10.965222, 6],
  ])("at %d °C and %d %% is %d by the equation", (temperatureC, humidity, want, digits) => {
    expect(equilibriumMoisturePercent(temperatureC, humidity)).toBeCloseTo(want, digits);
  });

  // A university extension specialist's rule: 30 % gives 6, 50 % 9, 65 % 12, 80 % 16 (quoted, not seen in print).
  it.each([
    [30, 6],
    [50, 9],
    [65, 12],
    [80, 16],
  ])("keeps the rule of thumb for %d %%", (humidity, want) => {
    expect(Math.abs(equilibriumMoisturePercent(20, humidity) - want)).toBeLessThan(0.5);
  });

  // Slips found in public copies of eq. (4-5); each moves the answer at 25 °C and 50 % by more than the last digit given.
  it("is none of the copying errors in circulation", () => {
    const ours = equilibriumMoisturePercent(25, 50);
    const right = fromCoefficients(0.5, setC(25));
    expect(ours).toBeCloseTo(right, 9);
    const slips = {
      "°C fed into the °F set": fromCoefficients(0.5, setF(25)),
      "third coefficient of K1 taken as −4.53e-5": fromCoefficients(0.5, {
        ...setC(25),
        k1: 6.27 - 0.00938 * 25 - 0.0000453 * 25 * 25,
      }),
      "humidity in place of temperature": fromCoefficients(0.5, setC(50)),
      "first term as K1·K·h/(1 + K1·K·h)": wrongFirstTerm(0.5, setC(25)),
    };
    for (const [slip, wrong] of Object.entries(slips))
      expect(Math.abs(ours - wrong), slip).toBeGreaterThan(0.01);
  });

  // Wood Handbook eq. (4-5) printed for °F: at room temperature the two sets agree to 0.02.
  it.each([5, 30, 50, 75, 95])("agrees with the °F set at 70 °F and %d %%", (humidity) => {
    const fahrenheitSet = fromCoefficients(humidity / 100, setF(70));
    expect(Math.abs(equilibriumMoisturePercent(celsius(70), humidity) - fahrenheitSet)).toBeLessThan(0.02);
  });

  it.each([
    [20, -1, "/relativeHumidityPercent"],
    [20, 100.1, "/relativeHumidityPercent"],
    [-10, 50, "/temperatureC"],
    [150, 50, "/temperatureC"],
    [Number.NaN, 50, "/temperatureC"],
    // The handbook's table ends at 270 °F, 132.2 °C.
    [133, 50, "/temperatureC"],
  ])("refuses %d °C and %d %%", (temperatureC, humidity, pointer) => {
    const attempt = () => equilibriumMoisturePercent(temperatureC, humidity);
    expect(attempt).toThrow(DomainError);
    expect(attempt).toThrow(pointer);
  });
});

type Coefficients = { w: number; k: number; k1: number; k2: number };

const setC = (t: number): Coefficients => ({
  w: 349 + 1.29 * t + 0.0135 * t ** 2,
  k: 0.805 + 0.000736 * t - 0.00000273 * t ** 2,
  k1: 6.27 - 0.00938 * t - 0.000303 * t ** 2,
  k2: 1.91 + 0.0407 * t - 0.000293 * t ** 2,
});

const setF = (t: number): Coefficients => ({
  w: 330 + 0.452 * t + 0.00415 * t ** 2,
  k: 0.791 + 0.000463 * t - 0.000000844 * t ** 2,
  k1: 6.34 + 0.000775 * t - 0.0000935 * t ** 2,
  k2: 1.09 + 0.0284 * t - 0.0000904 * t ** 2,
});

function fromCoefficients(h: number, { w, k, k1, k2 }: Coefficients): number {
  const second = (k1 * k * h + 2 * k1 * k2 * k ** 2 * h ** 2) / (1 + k1 * k * h + k1 * k2 * k ** 2 * h ** 2);
  return (1800 / w) * ((k * h) / (1 - k * h) + second);
}

function wrongFirstTerm(h: number, { w, k, k1, k2 }: Coefficients): number {
  const second = (k1 * k * h + 2 * k1 * k2 * k ** 2 * h ** 2) / (1 + k1 * k * h + k1 * k2 * k ** 2 * h ** 2);
  return (1800 / w) * ((k1 * k * h) / (1 + k1 * k * h) + second);
}
