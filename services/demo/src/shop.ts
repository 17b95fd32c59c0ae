import type { NewBit, NewRouter } from "@rimwise/client";

// An invented shop: Alder Lane Joinery. Nothing here was measured anywhere.

/** The rack, by the short names used in this demonstration. */
export const BITS = {
  straightQuarter: {
    name: "Straight, 6 mm",
    form: { kind: "straight", diameterMm: 6, cuttingLengthMm: 19 },
    shankDiameterMm: 6.35,
    wings: 2,
    massG: 14,
  },
  straightHalf: {
    name: "Straight, 1/2 in",
    form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
    shankDiameterMm: 12.7,
    wings: 2,
    massG: 58,
    markedMaxRpm: 24000,
  },
  straightWide: {
    name: "Straight, 2 in, heavy",
    form: { kind: "straight", diameterMm: 50.8, cuttingLengthMm: 31.75 },
    shankDiameterMm: 12.7,
    wings: 2,
    massG: 255,
  },
  rabbet: {
    name: "Rabbet, 1-3/8 in",
    form: { kind: "rabbet", diameterMm: 34.9, cuttingLengthMm: 12.7, pilotDiameterMm: 12.7 },
    shankDiameterMm: 12.7,
    wings: 2,
    massG: 88,
  },
  chamfer: {
    name: "Chamfer, 45°",
    form: { kind: "chamfer", diameterMm: 38.1, angleDeg: 45, pilotDiameterMm: 12.7 },
    shankDiameterMm: 12.7,
    wings: 2,
  },
  roundOverSmall: {
    name: "Round-over, 3/16 in",
    form: { kind: "round-over", diameterMm: 22.2, radiusMm: 4.76 },
    shankDiameterMm: 6.35,
    wings: 2,
    massG: 24,
  },
  roundOverLarge: {
    name: "Round-over, 1 in",
    form: { kind: "round-over", diameterMm: 63.5, radiusMm: 25.4 },
    shankDiameterMm: 12.7,
    wings: 2,
    massG: 110,
  },
  cove: {
    name: "Cove, 1/2 in",
    form: { kind: "cove", diameterMm: 38.1, radiusMm: 12.7 },
    shankDiameterMm: 12.7,
    wings: 2,
    massG: 104,
  },
  coreBox: {
    name: "Core-box, 3/4 in",
    form: { kind: "core-box", diameterMm: 19.05, cuttingLengthMm: 19 },
    shankDiameterMm: 12.7,
    wings: 2,
    massG: 70,
  },
  panelBevel: {
    name: "Panel-raising, bevel, 2-3/4 in",
    form: {
      kind: "panel-raising",
      diameterMm: 69.85,
      pilotDiameterMm: 12.7,
      profileHeightMm: 9,
      face: "bevel",
      tongueWidthMm: 8,
    },
    shankDiameterMm: 12.7,
    wings: 2,
    massG: 215,
    markedMaxRpm: 14000,
  },
  panelCove: {
    name: "Panel-raising, cove, 3-1/2 in",
    form: {
      kind: "panel-raising",
      diameterMm: 88.9,
      pilotDiameterMm: 12.7,
      profileHeightMm: 11,
      face: "cove",
      tongueWidthMm: 9,
    },
    shankDiameterMm: 12.7,
    wings: 2,
    massG: 340,
    notes: "Hums at 11,000; never tried faster.",
  },
  panelOgee: {
    name: "Panel-raising, ogee, 90 mm",
    form: {
      kind: "panel-raising",
      diameterMm: 90,
      pilotDiameterMm: 14,
      profileHeightMm: 12,
      face: "ogee",
      tongueWidthMm: 8,
    },
    shankDiameterMm: 12.7,
    wings: 2,
  },
} as const satisfies Record<string, NewBit>;

export const ROUTERS = {
  table: {
    name: "Table router, bench by the window",
    minRpm: 9000,
    maxRpm: 22000,
    dial: {
      marks: { first: 1, last: 5 },
      steps: 2,
      readings: [
        { mark: 1, rpm: 9150 },
        { mark: 2, rpm: 11650 },
        { mark: 3, rpm: 15300 },
        { mark: 5, rpm: 21700 },
      ],
    },
    inputPowerW: 2200,
    colletDiametersMm: [6.35, 12.7],
  },
  plunge: {
    name: "Plunge router",
    minRpm: 10000,
    maxRpm: 22000,
    dial: { marks: { first: "A", last: "F" }, steps: 1 },
    inputPowerW: 1600,
    colletDiametersMm: [6.35, 12.7],
  },
  trimmer: {
    name: "Trim router",
    minRpm: 12000,
    maxRpm: 30000,
    dial: { marks: { first: 1, last: 6 }, steps: 0 },
    inputPowerW: 700,
    colletDiametersMm: [6.35],
  },
  fixed: {
    name: "Old fixed-base router, one speed",
    minRpm: 23000,
    maxRpm: 23000,
    inputPowerW: 1100,
    colletDiametersMm: [6.35, 12.7],
  },
} as const satisfies Record<string, NewRouter>;

/** Ids of the ten woods the shop keeps in its racks. */
export const WOOD_IDS = [
  "black-cherry",
  "sugar-maple",
  "black-walnut",
  "white-oak",
  "red-oak",
  "white-ash",
  "yellow-poplar",
  "eastern-white-pine",
  "mdf",
  "plywood",
];
