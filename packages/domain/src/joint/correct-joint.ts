import { formPilotRadiusMm } from "../bit/form/registry.ts";
import { DomainError, type Fault } from "../quantity/fault.ts";
import type { JointHalf } from "./half.ts";
import type { JointKind } from "./joint-kind.ts";
import type { Halves, JointDefinition } from "./kind/define.ts";
import { jointDefinition } from "./kind/registry.ts";
import { type SolvedJoint, solved } from "./solve-joint.ts";

/** What was measured when the test pieces of both halves were put together. */
export type JointMeasured = {
  /** How far the second half's face stands above the first one's, both with the face that lay on the table, or the turned one, downward. */
  readonly facesOffMm?: number;
  /** How much thicker what goes in is than the fit asked takes; under 0 if it is too loose. */
  readonly tooThickMm?: number;
  /** How wide the shoulders stay apart because what goes in is too long. */
  readonly shouldersOpenMm?: number;
  /** Of a corner: how far the second half's outer face stands out past the end of the first. */
  readonly endsOffMm?: number;
};

/** A test piece that is farther off was not cut at these settings, mm. Ours. */
const MOST_OFF_MM = 3;

/**
 * The settings of both halves that put right what was measured of them together. Faces come flush by the second half's height; by both,
 * half each, if one bit cuts both at one height. What goes in gets thinner by its height or fence, shorter by its fence. Throws a
 * DomainError if nothing was measured, if it is off by more than 3 mm, or if no setting of these bits changes it: a tongue as thick as
 * its bit makes it, or as long as its bearing lets it.
 * @example
 * const bit = { form: { kind: "finger-joint", diameterMm: 35, fingers: 5, fingerHeightMm: 4, fingerDepthMm: 9 }, shankDiameterMm: 12.7, wings: 2 };
 * const { first, second } = solveJoint("finger-joint", [bit, bit], { thicknessMm: 20 });
 * correctedJoint("finger-joint", [first, second], { facesOffMm: 0.4 }).first.setting.heightMm // → 25.8
 */
export function correctedJoint(
  kind: JointKind,
  halves: Halves,
  measured: JointMeasured,
  clearanceMm = 0,
): SolvedJoint {
  const definition = jointDefinition(kind);
  const faults = measuredFaults(definition, halves, measured);
  if (faults.length > 0) throw new DomainError(faults);
  const { facesOffMm = 0, tooThickMm = 0, shouldersOpenMm = 0, endsOffMm = 0 } = measured;
  const [first, second] = halves;
  const heightsMm = definition.isTurnedOver ? [-facesOffMm / 2, -facesOffMm / 2] : [0, facesOffMm];
  const byHeightMm = definition.fitBy === "height" ? tooThickMm : 0;
  const byFenceMm = definition.fitBy === "fence" ? tooThickMm / 2 : 0;
  return solved(
    definition,
    [
      moved(first, heightsMm[0] ?? 0, -endsOffMm / 2 - (isHeld(second) ? shouldersOpenMm : 0)),
      moved(
        second,
        (heightsMm[1] ?? 0) + byHeightMm,
        -endsOffMm / 2 - byFenceMm + (isHeld(second) ? 0 : shouldersOpenMm),
      ),
    ],
    clearanceMm,
  );
}

function moved(half: JointHalf, byHeightMm: number, byFenceMm: number): JointHalf {
  const { heightMm, fenceMm } = half.setting;
  return {
    ...half,
    setting: { ...half.setting, heightMm: heightMm + byHeightMm, fenceMm: fenceMm + byFenceMm },
  };
}

/** Whether a bearing decides how far the bit reaches in. */
function isHeld({ bit }: JointHalf): boolean {
  return formPilotRadiusMm(bit.form) !== undefined;
}

function measuredFaults(
  { fitBy, goesInMm, isCorner, closes }: JointDefinition,
  [first, second]: Halves,
  measured: JointMeasured,
): Fault[] {
  const canChange: Readonly<Record<keyof JointMeasured, boolean>> = {
    facesOffMm: closes === "pushed",
    tooThickMm: goesInMm !== undefined && fitBy !== "bits",
    shouldersOpenMm: goesInMm !== undefined && closes === "pushed" && !(isHeld(first) && isHeld(second)),
    endsOffMm: isCorner,
  };
  const given = MEASURES.filter((name) => measured[name] !== undefined);
  if (given.length === 0) return [{ pointer: "", code: "nothing-measured", values: {} }];
  return given.flatMap((name): Fault[] => {
    const pointer = `/${name}`;
    const value = measured[name] ?? 0;
    if (!canChange[name]) return [{ pointer, code: "not-settable-here", values: {} }];
    const [min, max] = [name === "shouldersOpenMm" ? 0 : -MOST_OFF_MM, MOST_OFF_MM];
    return value >= min && value <= max
      ? []
      : [{ pointer, code: "out-of-range", values: { given: value, min, max } }];
  });
}

const MEASURES = ["facesOffMm", "tooThickMm", "shouldersOpenMm", "endsOffMm"] as const;
