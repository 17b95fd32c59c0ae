import { defineJoint, formOf } from "./define.ts";
import { settingsAbout, turnsAtMm } from "./with-itself.ts";

/** One board lying, one standing, at one height and fence: the middle of the lock is the middle of the mitre. Source: common practice. */
export const lockMitre = defineJoint({
  kind: "lock-mitre",
  meaning: "A corner of two boards whose mitres lock, one cut lying and one standing.",
  halves: [
    { name: "lying", forms: ["lock-mitre"], cut: "joint" },
    { name: "standing", forms: ["lock-mitre"], cut: "joint" },
  ],
  isTurnedOver: true,
  closes: "pushed",
  isCorner: true,
  meetAtMm: (halves) => turnsAtMm(halves, (bit) => formOf(bit, 0, ["lock-mitre"]).cuttingLengthMm / 2),
  settings: ([bit], { thicknessMm }) => {
    const { cuttingLengthMm, diameterMm } = formOf(bit, 0, ["lock-mitre"]);
    const alongMm = cuttingLengthMm / 2;
    // The mitre's middle lies as far from the fence as from the table.
    const fenceMm = diameterMm / 2 - alongMm - thicknessMm / 2;
    return settingsAbout({ alongMm, cutsMm: alongMm }, thicknessMm, fenceMm);
  },
  meetsBy: "side",
  goesInMm: undefined,
  touchesThroughout: true,
  fitBy: "bits",
});
