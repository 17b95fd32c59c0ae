import type { MountingClearance, MountingReason } from "../../router/mounting.ts";
import type { Show } from "../show.ts";

const SUBJECTS: Readonly<Record<MountingReason["code"], string>> = {
  diameter: "Across",
  mass: "In mass",
  "stored-energy": "In stored energy",
};

const CLEARED: Readonly<Record<MountingClearance, string>> = {
  handheld: "an ordinary bit for a handheld router",
  "handheld-with-care": "at the limit of what a handheld router may hold",
  "table-only": "for a router table only",
};

/** One reason for a clearance, as a sentence with its numbers. */
export function describeMountingReason(reason: MountingReason, show: Show): string {
  const { code, clearance, value, handheldMax, careMax } = reason;
  const amount = showFor(code, show);
  const bounds = `ordinary up to ${amount(handheldMax)}, with care up to ${amount(careMax)}`;
  return `${SUBJECTS[code]} this bit is ${CLEARED[clearance]}: ${amount(value)}; ${bounds}.`;
}

function showFor(code: MountingReason["code"], show: Show): (value: number) => string {
  switch (code) {
    case "diameter":
      return show.length;
    case "mass":
      return show.mass;
    case "stored-energy":
      return (energyJ) => `${energyJ.toFixed(energyJ < 10 ? 1 : 0)} J`;
  }
}
