import {
  angularSpeedRadPerS,
  balanceGradeMmPerS,
  bendingStressMPa,
  boredDiscStressPa,
  criticalSpeedRpm,
  deflectionMm,
  gyroscopicCoupleNm,
  ringStressPa,
  rotatingForceN,
  rpmOf,
  solidDiscStressPa,
  stiffnessNPerM,
  storedEnergyJ,
  whirlFactor,
} from "@rimwise/domain";
import { describe, expect, it } from "vitest";

const STEEL = 7850;
const CARBIDE = 14900;
const RIM_MM = 88.9;
const rim = (rpm: number) => (Math.PI * (RIM_MM / 1000) * rpm) / 60;

describe("stress of spinning rings and discs", () => {
  // Computed with 30 digits from the handbook formulas, router-sized.
  it.each([
    ["steel ring, 3.5 in, 22 000 rpm", ringStressPa(STEEL, rim(22000)), 82.321976],
    ["steel ring, 3.5 in, 12 000 rpm", ringStressPa(STEEL, rim(12000)), 24.492489],
    ["solid disc, 22 000 rpm", solidDiscStressPa(STEEL, 0.3, rim(22000)), 33.957815],
    ["solid disc, 12 000 rpm", solidDiscStressPa(STEEL, 0.3, rim(12000)), 10.103152],
    ["disc with a pin hole, 22 000 rpm", boredDiscStressPa(STEEL, 0.3, rim(22000), 0), 67.91563],
    ["disc with a pin hole, 12 000 rpm", boredDiscStressPa(STEEL, 0.3, rim(12000), 0), 20.206303],
    ["steel ring at exactly 125 mph", ringStressPa(STEEL, 55.88), 24.512209],
    ["carbide ring, 22 000 rpm", ringStressPa(CARBIDE, rim(22000)), 156.25445],
    ["carbide ring, 12 000 rpm", ringStressPa(CARBIDE, rim(12000)), 46.488927],
  ])("%s", (_, foundPa, wantMPa) => {
    expect(foundPa / 1e6 / wantMPa).toBeCloseTo(1, 7);
  });

  // Classic strength-of-materials problem 139: 490 lb/ft³, 20 ksi gives 435.04 ft/s; 30 ksi at R 10 in gives 6 105.54 rpm (its g 32.2).
  it("agrees with the textbook's thin rings", () => {
    const FT_PER_S = 0.3048;
    const density = 490 / 32.2; // slug/ft³
    const speedAt = (ksi: number) => Math.sqrt((ksi * 1000 * 144) / density);
    expect(speedAt(20)).toBeCloseTo(435.04, 2);
    const stressPa = ringStressPa((density * 14.593903) / FT_PER_S ** 3, speedAt(20) * FT_PER_S);
    expect(stressPa / 6894.757293 / 20000).toBeCloseTo(1, 6);
    expect(rpmOf(speedAt(30) / (10 / 12))).toBeCloseTo(6105.54, 1);
  });

  // Handbook of calculations, eq. 3.44, p. 150: ρ 7 850, r_o 1 m, r_i 25 mm, 1 000 rpm, ν 0.3. The book rounds ω to 105 rad/s: 71.4 MPa.
  it("agrees with the handbook's disc with a bore, at its rounding and without", () => {
    expect(boredDiscStressPa(7850, 0.3, 105, 0.025) / 1e6).toBeCloseTo(71.4, 1);
    expect(boredDiscStressPa(7850, 0.3, angularSpeedRadPerS(1000), 0.025) / 1e6).toBeCloseTo(71.0294, 3);
    expect(ringStressPa(7850, 105)).toBeCloseTo(86546250, 4);
  });

  it("doubles at a pin hole (a common fact of discs)", () => {
    expect(boredDiscStressPa(STEEL, 0.3, 50, 0) / solidDiscStressPa(STEEL, 0.3, 50)).toBeCloseTo(2, 12);
  });
});

describe("rotating force and balance (ISO 21940-11)", () => {
  // e_per in µm by grade and speed, G = e·Ω, computed with 30 digits; G 6.3 at 3 000 rpm is 20.05 µm in the published table.
  const GRADES = [40, 16, 6.3, 2.5, 1];
  const TABLE: readonly [rpm: number, micrometres: readonly number[]][] = [
    [3000, [127.32395, 50.929582, 20.053523, 7.9577472, 3.1830989]],
    [9000, [42.441318, 16.976527, 6.6845076, 2.6525824, 1.061033]],
    [12000, [31.830989, 12.732395, 5.0133807, 1.9894368, 0.79577472]],
    [16000, [23.873241, 9.5492966, 3.7600355, 1.4920776, 0.59683104]],
    [18000, [21.220659, 8.4882636, 3.3422538, 1.3262912, 0.53051648]],
    [22000, [17.362357, 6.944943, 2.7345713, 1.0851473, 0.43405894]],
    [24000, [15.915494, 6.3661977, 2.5066904, 0.99471839, 0.39788736]],
  ];
  it.each(TABLE)("at %i rpm each grade allows the table's eccentricity", (rpm, micrometres) => {
    micrometres.forEach((each, index) => {
      expect(balanceGradeMmPerS(each / 1000, rpm) / (GRADES[index] ?? Number.NaN)).toBeCloseTo(1, 6);
    });
  });

  it.each([
    ["15 000 rpm, G 6.3", 4.0107046, 15000],
    ["30 000 rpm, G 6.3", 2.0053523, 30000],
  ])("%s", (_, micrometres, rpm) => {
    expect(balanceGradeMmPerS(micrometres / 1000, rpm)).toBeCloseTo(6.3, 5);
  });

  it("gives U_per = 9 549·G·m/n: 0.25 kg, G 6.3, 22 000 rpm is 0.684 g·mm and pulls with 3.63 N", () => {
    const eccentricityMm = 6.3 / angularSpeedRadPerS(22000);
    expect(250 * eccentricityMm).toBeCloseTo(0.68364282, 7);
    expect((9549.296586 * 6.3 * 0.25) / 22000).toBeCloseTo(0.68364282, 7);
    expect(rotatingForceN(250, eccentricityMm, 22000)).toBeCloseTo(3.6285395, 6);
  });

  it.each([
    ["0.25 kg, 0.001 in, 22 000 rpm", 0.0254 / 2, 22000, 33.703602 / 2],
    ["0.25 kg, 0.001 in off centre, 12 000 rpm", 0.0254, 12000, 10.027518],
    ["0.25 kg, 50 µm off centre, 22 000 rpm", 0.05, 22000, 66.345674],
  ])("%s", (_, eccentricityMm, rpm, wantN) => {
    expect(rotatingForceN(250, eccentricityMm, rpm) / wantN).toBeCloseTo(1, 7);
  });

  it("energy and stress go with the square: 22 000 to 12 000 rpm is 3.3611111", () => {
    expect(storedEnergyJ(1e-4, 22000) / storedEnergyJ(1e-4, 12000)).toBeCloseTo(3.3611111, 7);
    expect(0.5 * 0.002 * rim(22000) ** 2).toBeCloseTo(10.486876, 6);
    expect(0.5 * 0.002 * rim(12000) ** 2).toBeCloseTo(3.1200622, 7);
  });
});

describe("the overhung shank (cantilever with an end load, standard; E 200 GPa)", () => {
  const quarter = { shankDiameterMm: 6.35, lengthMm: 30 };
  const half = { shankDiameterMm: 12.7, lengthMm: 30 };

  it.each([
    ["1/4 in stiffness, N/m", stiffnessNPerM(quarter), 1773586.1],
    ["1/2 in stiffness, N/m", stiffnessNPerM(half), 28377378],
    ["1/4 in with 0.05 kg, rpm", criticalSpeedRpm(quarter, 50), 56873.8],
    ["1/2 in with 0.05 kg, rpm", criticalSpeedRpm(half, 50), 227495],
    ["1/2 in, 40 mm, 0.25 kg, rpm", criticalSpeedRpm({ shankDiameterMm: 12.7, lengthMm: 40 }, 250), 66081.4],
    ["1/4 in under 100 N, mm", deflectionMm(quarter, 100), 0.05638294],
    ["1/2 in under 100 N, mm", deflectionMm(half, 100), 0.0035239337],
    ["1/4 in under 100 N, MPa", bendingStressMPa(quarter, 100), 119.34389],
    ["1/2 in under 100 N, MPa", bendingStressMPa(half, 100), 14.917986],
  ])("%s", (_, found, want) => {
    expect(found / want).toBeCloseTo(1, 5);
  });

  it("half an inch against a quarter: stiffness × 16, stress ÷ 8, critical speed × 4", () => {
    expect(stiffnessNPerM(half) / stiffnessNPerM(quarter)).toBeCloseTo(16, 10);
    expect(bendingStressMPa(quarter, 1) / bendingStressMPa(half, 1)).toBeCloseTo(8, 10);
    expect(criticalSpeedRpm(half, 50) / criticalSpeedRpm(quarter, 50)).toBeCloseTo(4, 10);
  });

  it("rings at √(g/δ) of its own sag (standard)", () => {
    const sagM = deflectionMm(quarter, 0.05 * 9.80665) / 1000;
    expect(criticalSpeedRpm(quarter, 50)).toBeCloseTo((Math.sqrt(9.80665 / sagM) * 60) / (2 * Math.PI), 6);
  });
});

describe("whirl and gyroscope", () => {
  it("runs out without bound at the critical speed and settles on the mass centre far above it (Jeffcott rotor)", () => {
    expect(whirlFactor(7000, 10000)).toBeCloseTo(1 / (1 - 0.49), 12);
    expect(whirlFactor(9999, 10000)).toBeGreaterThan(1000);
    expect(whirlFactor(1e6, 1000) * 1e6).toBeCloseTo(1, 2);
  });

  // Textbook ex. 14.1, p. 484: disc Ø300 mm, 5 kg, at the end of a 600 mm arm, 300 rpm; weight's moment over I·ω gives ω_p 16.7 rad/s.
  it("precesses as the textbook's disc", () => {
    const inertia = 0.5 * 5 * 0.15 ** 2;
    const precession = (5 * 9.81 * 0.6) / gyroscopicCoupleNm(inertia, 300, 1);
    expect(precession).toBeCloseTo(16.65, 1);
  });

  // Textbook ex. 14.2, p. 485: disc Ø150 mm, 5 kg, 1 000 rpm, bearings 100 mm apart, precession 60 rpm: 117.05 N and 68.00 N unrounded.
  it("loads bearings as the textbook's rotor", () => {
    const couple = gyroscopicCoupleNm(0.5 * 5 * 0.075 ** 2, 1000, angularSpeedRadPerS(60));
    const perBearing = couple / 0.1;
    expect(perBearing + (5 * 9.81) / 2).toBeCloseTo(117.05, 1);
    expect(perBearing - (5 * 9.81) / 2).toBeCloseTo(68.0, 1);
  });

  it("resists a router's tilting: 0.25 kg disc of r 44.45 mm at 12 000 rpm and 1 rad/s is 0.3104 N·m", () => {
    expect(gyroscopicCoupleNm(0.5 * 0.25 * 0.04445 ** 2, 12000, 1)).toBeCloseTo(0.31035833, 8);
  });
});
