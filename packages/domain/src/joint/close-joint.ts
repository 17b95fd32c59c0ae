import { betweenWalls, type Placed } from "./between-walls.ts";
import { acrossMm, endedBy, type JointHalf, raised, turnedOver, wallOf } from "./half.ts";
import type { JointKind } from "./joint-kind.ts";
import { formOf } from "./kind/define.ts";
import { jointDefinition } from "./kind/registry.ts";
import { meeting, type Stretch } from "./reach.ts";

/** Two halves laid on each other. All in the frame of the first as it is cut: x from its edge into it, z up from its face on the table. */
export type JointClosure = {
  /** How far the other half reaches past the first one's edge. */
  readonly reachMm: number;
  /** The heights between which the halves meet first. */
  readonly meetsAt: Stretch;
  /** The widest place between them that stays open, and the deepest at which wood meets wood too early. 0 if there is none. */
  readonly gap: Placed;
  readonly overlap: Placed;
  /** How far the other half's face stands above the first one's, below it if under 0, when they lock. */
  readonly facesOffMm: number;
  /** Of a corner: how far the other half's outer face stands out past the end of the first, short of it if under 0. Undefined of other joints. */
  readonly endsOffMm: number | undefined;
};

/**
 * Lays two halves of a joint on each other, cut by these bits as they measure now at these settings: locked in height, then pushed
 * together until wood meets wood, or slid along the middle. Gap and overlap are distances between the two walls, true to about 0.002 mm.
 * Throws a DomainError if a bit does not cut this half (`/0/form/kind`).
 * @example
 * const stick = { kind: "stick", diameterMm: 41.3, grooveWidthMm: 6.35, grooveDepthMm: 9.53, radiusMm: 6, landMm: 2 };
 * const halves = [stick, { ...stick, kind: "cope" }].map((form) => ({ form, shankDiameterMm: 12.7, wings: 2 }));
 * const { first, second } = solveJoint("cope-and-stick", halves, { thicknessMm: 20 });
 * closeJoint("cope-and-stick", first, second).facesOffMm // → 0
 */
export function closeJoint(kind: JointKind, half: JointHalf, otherHalf: JointHalf): JointClosure {
  const { halves, isTurnedOver, closes, isCorner, meetAtMm } = jointDefinition(kind);
  formOf(half.bit, 0, halves[0].forms);
  formOf(otherHalf.bit, 1, halves[1].forms);
  const { thicknessMm } = otherHalf.setting;
  const otherMm = acrossMm(otherHalf);
  const [atMm, otherAtMm] = meetAtMm([half, otherHalf]);
  const facesOffMm = atMm - (isTurnedOver ? thicknessMm - otherAtMm : otherAtMm);
  const wall = wallOf(half);
  const asCut = wallOf(otherHalf);
  const turned = raised(isTurnedOver ? turnedOver(asCut, thicknessMm) : asCut, facesOffMm);
  // A half that is slid in ends at its end; one that is pushed is as thick as the first.
  const other = closes === "slid" ? endedBy(turned, half.setting.thicknessMm, otherMm / 2) : turned;
  const met = meeting(wall, other);
  const reachMm = closes === "slid" ? otherMm / 2 : met.reachMm;
  return {
    reachMm,
    meetsAt: met.meetsAt,
    ...betweenWalls(wall, other, reachMm),
    facesOffMm,
    endsOffMm: isCorner ? otherMm - reachMm : undefined,
  };
}
