import {
  FORMS,
  type Form,
  type FormKind,
  formFaults,
  formOutline,
  formPilotRadiusMm,
  type SearchBit,
} from "@rimwise/domain";
import type { Random } from "../fuzz/random.ts";

export function between(random: Random, least: number, most: number): number {
  return least + ((most - least) * random.below(STEPS)) / STEPS;
}

/** Sizes between two bounds fall on one of so many places: far finer than any tolerance. */
const STEPS = 1e6;

type Maker = (length: (least: number, most: number) => number, choose: <V>(...values: V[]) => V) => Form;

/** A bit of each form at sizes a shop may have. */
const MAKERS: Readonly<Record<FormKind, Maker>> = {
  straight: (mm) => ({ kind: "straight", diameterMm: mm(3, 32), cuttingLengthMm: mm(8, 50) }),
  "spiral-up-cut": (mm) => ({ kind: "spiral-up-cut", diameterMm: mm(3, 13), cuttingLengthMm: mm(10, 40) }),
  "spiral-down-cut": (mm) => ({
    kind: "spiral-down-cut",
    diameterMm: mm(3, 13),
    cuttingLengthMm: mm(10, 40),
  }),
  "spiral-compression": (mm) => ({
    kind: "spiral-compression",
    diameterMm: mm(6, 13),
    cuttingLengthMm: mm(16, 40),
  }),
  "flush-trim": (mm, choose) => ({
    kind: "flush-trim",
    diameterMm: mm(6, 25),
    cuttingLengthMm: mm(10, 40),
    bearing: choose("tip", "shank"),
  }),
  rabbet: (mm) => {
    const pilotDiameterMm = mm(8, 20);
    const diameterMm = pilotDiameterMm + 2 * mm(4, 12);
    return { kind: "rabbet", diameterMm, pilotDiameterMm, cuttingLengthMm: mm(8, 16) };
  },
  "slot-cutter": (mm, choose) => ({
    kind: "slot-cutter",
    diameterMm: mm(35, 50),
    slotWidthMm: mm(1.5, 7),
    arborLengthMm: mm(8, 30),
    ...(choose(true, false) && { pilotDiameterMm: mm(16, 26), bearing: choose("tip", "shank") }),
  }),
  chamfer: (mm, choose) => {
    const pilotDiameterMm = mm(8, 14);
    const form = {
      kind: "chamfer" as const,
      diameterMm: pilotDiameterMm + 2 * mm(5, 16),
      angleDeg: choose(15, 25, 30, 45),
    };
    return choose(true, false) ? { ...form, pilotDiameterMm } : form;
  },
  "v-groove": (mm, choose) => ({ kind: "v-groove", diameterMm: mm(8, 30), angleDeg: choose(60, 90, 120) }),
  "round-over": (mm) => {
    const radiusMm = mm(2, 16);
    return { kind: "round-over", diameterMm: mm(8, 14) + 2 * radiusMm, radiusMm };
  },
  beading: (mm) => {
    const radiusMm = mm(2, 12);
    const pilotDiameterMm = mm(8, 13);
    const diameterMm = pilotDiameterMm + 2 * radiusMm + 2 * mm(1, 4);
    return { kind: "beading", diameterMm, radiusMm, pilotDiameterMm, filletMm: mm(1, 4) };
  },
  cove: (mm) => {
    const radiusMm = mm(3, 16);
    return { kind: "cove", diameterMm: mm(8, 14) + 2 * radiusMm, radiusMm };
  },
  "core-box": (mm) => {
    const diameterMm = mm(4, 32);
    return { kind: "core-box", diameterMm, cuttingLengthMm: diameterMm / 2 + mm(1, 12) };
  },
  bullnose: (mm) => {
    const radiusMm = mm(3, 12);
    return { kind: "bullnose", diameterMm: mm(10, 16) + 2 * radiusMm, radiusMm, landMm: mm(1, 3) };
  },
  ogee: (mm, choose) => {
    const radiusMm = mm(3, 8);
    const form = { kind: "ogee" as const, radiusMm, curve: choose("roman" as const, "classical" as const) };
    return { ...form, diameterMm: mm(8, 13) + 4 * radiusMm };
  },
  thumbnail: (mm) => ({
    kind: "thumbnail",
    diameterMm: mm(40, 60),
    profileHeightMm: mm(5, 11),
    pilotDiameterMm: mm(10, 14),
  }),
  dovetail: (mm, choose) => ({
    kind: "dovetail",
    diameterMm: mm(9, 22),
    angleDeg: choose(7, 9, 14),
    cuttingLengthMm: mm(8, 18),
  }),
  keyhole: (mm) => ({
    kind: "keyhole",
    diameterMm: mm(9, 13),
    headHeightMm: mm(3, 5),
    neckDiameterMm: mm(4, 6),
    cuttingLengthMm: mm(9, 14),
  }),
  "t-slot": (mm) => ({
    kind: "t-slot",
    diameterMm: mm(14, 24),
    headHeightMm: mm(4, 8),
    neckDiameterMm: mm(6, 10),
    cuttingLengthMm: mm(12, 20),
  }),
  tongue: (mm, choose) => ({
    kind: "tongue",
    diameterMm: mm(38, 48),
    tongueThicknessMm: mm(4, 7),
    tongueLengthMm: mm(5, 10),
    cuttingLengthMm: mm(18, 26),
    pilot: choose("bearing" as const, "none" as const),
  }),
  groove: (mm, choose) => ({
    kind: "groove",
    diameterMm: mm(38, 48),
    grooveWidthMm: mm(4, 7),
    grooveDepthMm: mm(5, 10),
    cuttingLengthMm: mm(18, 26),
    pilot: choose("bearing" as const, "none" as const),
  }),
  cope: (mm) => ({
    kind: "cope",
    diameterMm: mm(38, 44),
    grooveWidthMm: mm(5, 7),
    grooveDepthMm: mm(8, 10),
    radiusMm: mm(4, 7),
    landMm: mm(1, 3),
  }),
  stick: (mm) => ({
    kind: "stick",
    diameterMm: mm(38, 44),
    grooveWidthMm: mm(5, 7),
    grooveDepthMm: mm(8, 10),
    radiusMm: mm(4, 7),
    landMm: mm(1, 3),
  }),
  "lock-mitre": (mm) => ({
    kind: "lock-mitre",
    diameterMm: mm(56, 70),
    cuttingLengthMm: mm(18, 26),
    lockDepthMm: mm(1, 3),
  }),
  "drawer-joint": (mm) => ({
    kind: "drawer-joint",
    diameterMm: mm(25, 45),
    cuttingLengthMm: mm(10, 20),
    stepMm: mm(3, 7),
    stepHeightMm: mm(3, 6),
  }),
  "finger-joint": (mm) => ({
    kind: "finger-joint",
    diameterMm: mm(35, 50),
    fingers: 3,
    fingerHeightMm: mm(3, 5),
    fingerDepthMm: mm(6, 10),
  }),
  "panel-raising": (mm, choose) => ({
    kind: "panel-raising",
    diameterMm: mm(70, 90),
    pilotDiameterMm: mm(12, 20),
    profileHeightMm: mm(6, 14),
    face: choose("bevel" as const, "cove" as const, "ogee" as const),
    tongueWidthMm: mm(6, 10),
  }),
  "panel-raising-vertical": (mm, choose) => ({
    kind: "panel-raising-vertical",
    diameterMm: mm(28, 40),
    faceWidthMm: mm(25, 38),
    faceDepthMm: mm(5, 9),
    face: choose("bevel" as const, "cove" as const),
    tongueWidthMm: mm(6, 9),
  }),
  surfacing: (mm) => ({ kind: "surfacing", diameterMm: mm(25, 60), cuttingLengthMm: mm(5, 16) }),
  custom: (mm) => {
    const startRadiusMm = mm(3, 8);
    const rimMm = startRadiusMm + mm(3, 8);
    const toMm = mm(3, 8);
    return {
      kind: "custom",
      diameterMm: 2 * rimMm,
      startRadiusMm,
      segments: [
        { kind: "line", toMm, radiusMm: startRadiusMm + 1 },
        { kind: "line", toMm: toMm + mm(2, 6), radiusMm: rimMm },
        { kind: "line", toMm: toMm + mm(6, 12), radiusMm: rimMm },
      ],
    };
  },
};

/** Bits of all forms in turn, of random sizes. */
export function rackOf(count: number, random: Random): SearchBit[] {
  return Array.from({ length: count }, (_, index) => {
    const form = formAt(index, random);
    const id = `${form.kind} ${index}`;
    return { id, outline: formOutline(form), pilotRadiusMm: formPilotRadiusMm(form) };
  });
}

function formAt(index: number, random: Random): Form {
  const kind = FORMS[index % FORMS.length]?.kind ?? "straight";
  for (;;) {
    const form = MAKERS[kind](
      (least, most) => between(random, least, most),
      (...values) => random.of(values),
    );
    if (formFaults(form).length === 0) return form;
  }
}
