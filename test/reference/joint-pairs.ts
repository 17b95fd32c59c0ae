import type { Bit, Form, JointAsked, JointHalf, JointKind } from "@rimwise/domain";

/** The same bit with other sizes. */
export const bitWith = (bit: Bit, sizes: object): Bit => ({ ...bit, form: { ...bit.form, ...sizes } });

/** A half at a setting that is off by so much. */
export const off = (half: JointHalf, heightMm: number, fenceMm = 0): JointHalf => ({
  ...half,
  setting: {
    ...half.setting,
    heightMm: half.setting.heightMm + heightMm,
    fenceMm: half.setting.fenceMm + fenceMm,
  },
});

const bitOf = (form: Form): Bit => ({ form, shankDiameterMm: 12.7, wings: 2 });

/** A cope and stick pair for 3/4 in doors: groove 1/4 in wide and 3/8 in deep (common practice). */
const DOOR = { diameterMm: 41.3, grooveWidthMm: 6.35, grooveDepthMm: 9.53, radiusMm: 6, landMm: 2 };
export const STICK = bitOf({ kind: "stick", ...DOOR });
export const COPE = bitOf({ kind: "cope", ...DOOR });

/** A matched pair for flooring: tongue and groove 1/4 in by 3/8 in, at the middle of the edge (common practice). */
export const TONGUE = bitOf({
  kind: "tongue",
  diameterMm: 41.3,
  tongueThicknessMm: 6.35,
  tongueLengthMm: 9.53,
  cuttingLengthMm: 25,
});
export const GROOVE = bitOf({
  kind: "groove",
  diameterMm: 41.3,
  grooveWidthMm: 6.35,
  grooveDepthMm: 9.53,
  cuttingLengthMm: 25,
});
export const SLOT = bitOf({ kind: "slot-cutter", diameterMm: 47.6, slotWidthMm: 6.35, arborLengthMm: 20 });

export const LOCK_MITRE = bitOf({
  kind: "lock-mitre",
  diameterMm: 69.9,
  cuttingLengthMm: 22,
  lockDepthMm: 2.5,
});
export const DRAWER_JOINT = bitOf({
  kind: "drawer-joint",
  diameterMm: 25.4,
  cuttingLengthMm: 12.7,
  stepMm: 4,
  stepHeightMm: 6,
});
export const FINGER_JOINT = bitOf({
  kind: "finger-joint",
  diameterMm: 35,
  fingers: 5,
  fingerHeightMm: 4,
  fingerDepthMm: 9,
});
export const TAPERED_FINGERS = bitOf({
  kind: "finger-joint",
  diameterMm: 35,
  fingers: 5,
  fingerHeightMm: 4,
  fingerDepthMm: 9,
  taperDeg: 7,
});

/** 1/2 in, 14 degrees: the usual dovetail (common practice). */
export const DOVETAIL = bitOf({ kind: "dovetail", diameterMm: 12.7, angleDeg: 14, cuttingLengthMm: 12.7 });
export const RABBET = bitOf({
  kind: "rabbet",
  diameterMm: 34.9,
  cuttingLengthMm: 12.7,
  pilotDiameterMm: 15.9,
});
export const PANEL = bitOf({
  kind: "panel-raising",
  diameterMm: 88.9,
  pilotDiameterMm: 12.7,
  profileHeightMm: 12,
  face: "bevel",
  tongueWidthMm: 10,
});

/** Every joint as a shop makes it with fresh bits. */
export const FRESH: readonly (readonly [string, JointKind, readonly [Bit, Bit], JointAsked])[] = [
  ["cope and stick", "cope-and-stick", [STICK, COPE], { thicknessMm: 19 }],
  ["tongue and groove", "tongue-and-groove", [GROOVE, TONGUE], { thicknessMm: 19 }],
  ["tongue and slot", "tongue-and-groove", [SLOT, TONGUE], { thicknessMm: 22 }],
  ["lock mitre", "lock-mitre", [LOCK_MITRE, LOCK_MITRE], { thicknessMm: 18 }],
  ["drawer joint", "drawer-joint", [DRAWER_JOINT, DRAWER_JOINT], { thicknessMm: 12 }],
  ["finger joint", "finger-joint", [FINGER_JOINT, FINGER_JOINT], { thicknessMm: 22 }],
  ["tapered fingers", "finger-joint", [TAPERED_FINGERS, TAPERED_FINGERS], { thicknessMm: 20 }],
  [
    "sliding dovetail",
    "sliding-dovetail",
    [DOVETAIL, DOVETAIL],
    { thicknessMm: 24, otherThicknessMm: 15, depthMm: 8 },
  ],
  ["shiplap", "shiplap", [RABBET, RABBET], { thicknessMm: 19 }],
];
