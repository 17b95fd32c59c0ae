import type { Cut } from "./kind/registry.ts";

/** Whether it starts or ends inside the work, where the bit must be brought into the wood and out of it. */
export function isStopped(cut: Cut): boolean {
  return cut.kind === "inlay" || ("isStopped" in cut && cut.isStopped === true);
}

/** Whether the cut goes around the inside of an opening. */
export function isInside(cut: Cut): boolean {
  return "side" in cut && cut.side === "inside";
}

/** Whether it runs along straight sides of the work, which a fence or an edge guide can follow: not curved, nor around an opening or an inlay. */
export function isStraight(cut: Cut): boolean {
  const isCurved = "isCurved" in cut && cut.isCurved === true;
  return !isCurved && !isInside(cut) && cut.kind !== "inlay";
}
