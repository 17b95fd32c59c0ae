import {
  describeFault,
  type Fault,
  type Form,
  formFaults,
  formOutline,
  GIVEN_OUTLINE_RANGES,
  type GivenSegment,
  roundTo,
  segmentSpanMm,
} from "@rimwise/domain";
import { flattened } from "./flatten.ts";
import { readPath } from "./read-path.ts";
import type { Corner, PathFault, Stroke } from "./stroke.ts";

type CustomForm = Form<"custom">;

/** A segment, and the command of the path that drew it. */
type Drawn = { readonly segment: GivenSegment; readonly command: number };

export type Converted =
  | { readonly form: CustomForm; readonly toleranceMm: number }
  | { readonly faults: readonly PathFault[] };

/** How near lines stay to a curve: the finest that fits into one outline is taken, mm. */
const TOLERANCES_MM = [0.01, 0.02, 0.05, 0.1] as const;

/** A millionth of a millimetre: what is finer is rounding. */
const DECIMALS = 6;

const WHERE: Readonly<Record<string, string>> = {
  toMm: ", its distance from the tip in mm",
  radiusMm: ", its distance from the axis in mm",
  arcRadiusMm: ", the radius of its arc in mm",
};

/** The custom form a path draws, or everything that keeps it from being one. */
export function convertPath(path: string, unitMm: number): Converted {
  const read = readPath(path, unitMm);
  if ("message" in read) return { faults: [read] };
  const { start, strokes } = read;
  if (roundTo(start.yMm, DECIMALS) !== 0) {
    return {
      faults: [
        { message: "The path does not start at the tip.", accepted: "a path that starts at y = 0, the tip" },
      ],
    };
  }
  const hasCurves = strokes.some(({ kind }) => kind === "curve");
  for (const toleranceMm of hasCurves ? TOLERANCES_MM : [0]) {
    const drawn = segmentsOf(start, strokes, toleranceMm);
    if (drawn.length > GIVEN_OUTLINE_RANGES.segments.max) continue;
    const form = formOf(start, drawn);
    const faults = formFaults(form);
    if (faults.length > 0) return { faults: faults.map((fault) => inPath(fault, drawn)) };
    return { form, toleranceMm };
  }
  return {
    faults: [
      {
        message: "The path is too long for one outline.",
        accepted: `at most ${GIVEN_OUTLINE_RANGES.segments.max} lines and arcs, a curve being as many lines as keep within ${TOLERANCES_MM.at(-1)} mm of it`,
      },
    ],
  };
}

function segmentsOf(start: Corner, strokes: readonly Stroke[], toleranceMm: number): Drawn[] {
  let from = start;
  return strokes.flatMap((stroke) => {
    const ends =
      stroke.kind === "curve" ? flattened(from, stroke.controls, stroke.to, toleranceMm) : [stroke.to];
    from = stroke.to;
    return ends.map(({ xMm, yMm }): Drawn => {
      const end = { toMm: rounded(yMm), radiusMm: rounded(xMm) };
      if (stroke.kind !== "arc") return { command: stroke.command, segment: { kind: "line", ...end } };
      const { bulge, radiusMm } = stroke;
      return {
        command: stroke.command,
        segment: { kind: "arc", ...end, arcRadiusMm: rounded(radiusMm), bulge },
      };
    });
  });
}

function formOf(start: Corner, drawn: readonly Drawn[]): CustomForm {
  const form: CustomForm = {
    kind: "custom",
    diameterMm: 0,
    startRadiusMm: rounded(start.xMm),
    segments: drawn.map(({ segment }) => segment),
  };
  const widestMm = Math.max(0, ...formOutline(form).map((segment) => segmentSpanMm(segment).greatestMm));
  const { min, max } = GIVEN_OUTLINE_RANGES.diameterMm;
  // It follows from the path: if it is out of range, the commands that drew it are at fault.
  return { ...form, diameterMm: Math.min(max, Math.max(min, rounded(2 * widestMm))) };
}

/** A fault of the form, reported at the command that drew it. */
function inPath(fault: Fault, drawn: readonly Drawn[]): PathFault {
  const { message, accepted } = describeFault(fault);
  const [, name, index, field] = fault.pointer.split("/");
  if (name === "diameterMm") {
    const { min, max } = GIVEN_OUTLINE_RANGES.diameterMm;
    return {
      message: "No bit is as wide as this one is drawn.",
      accepted: `${min} to ${max} mm across; see unitMm`,
    };
  }
  if (name !== "segments")
    return { message: `Where the path starts, its distance from the axis in mm: ${message}`, accepted };
  const command = drawn[Number(index)]?.command ?? 1;
  return { message: `Command ${command}${WHERE[String(field)] ?? ""}: ${message}`, accepted };
}

function rounded(valueMm: number): number {
  return roundTo(valueMm, DECIMALS);
}
