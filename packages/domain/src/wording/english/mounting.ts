import type { MeasuredReason, MountingClearance, MountingReason } from "../../router/mounting.ts";
import type { Show } from "../show.ts";

const SUBJECTS: Readonly<Record<MeasuredReason["code"], string>> = {
  diameter: "Diameter",
  mass: "Mass",
  "stored-energy": "Energy stored in the spin",
  "gyroscopic-couple": "Couple that resists tilting",
};

const CLEARED: Readonly<Record<MountingClearance, string>> = {
  handheld: "ordinary in a handheld router",
  "handheld-with-care": "at the limit for a handheld router",
  "table-only": "for a router table only",
};

/**
 * One reason for a clearance, as a sentence with its numbers.
 * @example
 * const reason = { code: "mass", clearance: "handheld", value: 58, handheldMax: 100, careMax: 170 };
 * describeMountingReason(reason, showIn("metric")) // → "Mass 58 g: ordinary in a handheld router (ordinary up to 100 g, with care up to 170 g)."
 */
export function describeMountingReason(reason: MountingReason, show: Show): string {
  if (reason.code === "form") return "This form takes a table and a fence, whatever it weighs.";
  const { code, clearance, value, handheldMax, careMax } = reason;
  const amount = showFor(code, show);
  const bounds = `ordinary up to ${amount(handheldMax)}, with care up to ${amount(careMax)}`;
  return `${SUBJECTS[code]} ${amount(value)}: ${CLEARED[clearance]} (${bounds}).`;
}

function showFor(code: MeasuredReason["code"], show: Show): (value: number) => string {
  switch (code) {
    case "diameter":
      return show.length;
    case "mass":
      return show.mass;
    case "gyroscopic-couple":
      return (coupleNm) => `${coupleNm.toFixed(2)} N·m`;
    case "stored-energy":
      return (energyJ) => `${energyJ.toFixed(energyJ < 10 ? 1 : 0)} J`;
  }
}
