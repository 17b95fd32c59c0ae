import {
  describeJointFinding,
  formOutline,
  type JointHalf,
  type JointKind,
  jointDefinition,
  type Profile,
  type ProfilePoint,
  profileAfter,
  type Show,
  type SolvedJoint,
} from "@rimwise/domain";
import { cleared } from "../drafting/cleared.ts";
import { hatched } from "../drafting/hatch.ts";
import { MEASURE_ROW_MM, measureAcross } from "../drafting/measure.ts";
import { INNER_WIDTH_MM, MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "../drafting/page.ts";
import { CHORD_MM, profileContours } from "../drafting/profile-contours.ts";
import { scaleFor, scaleText } from "../drafting/scale.ts";
import { heading, paragraphs, textLine } from "../drafting/text.ts";
import { type Frame, onPaper } from "../scene/frame.ts";
import { circle, path, polyline } from "../scene/path.ts";
import type { Item, Scene } from "../scene/scene.ts";
import { type DrawnUnits, definePicture } from "./define.ts";

/** What a joint is drawn of: a solved one, or two halves with their closure. */
export type JointDrawn = {
  readonly kind: JointKind;
  readonly joint: Pick<SolvedJoint, "closure" | "findings"> & {
    readonly first: JointHalf;
    readonly second: JointHalf;
  };
  readonly name: string;
  readonly units: DrawnUnits;
};

/** Two halves closed on each other. */
export const jointPicture = definePicture<"joint", JointDrawn>({
  kind: "joint",
  meaning: "Both halves of a joint closed, with the widest gap and the deepest overlap marked.",
  draw,
});

/** Wood shown beyond the joint on both sides, mm in the world. */
const BEYOND_MM = 8;
const MOST_HEIGHT_MM = 70;
const MARK_MM = 2;
/** Gaps and overlaps below this are what drawing and computing leave, mm. */
const NOTHING_MM = 0.005;
const OTHER = { anglesDeg: [45], spacingMm: 2, line: "thin" as const };

function draw({ kind, joint, name }: JointDrawn, show: Show): Scene {
  const definition = jointDefinition(kind);
  const { closure, findings } = joint;
  const head = heading(name);
  const about = paragraphs([definition.meaning], head.bottomMm);
  const first = firstHalf(joint.first, definition.closes === "slid");
  const other = otherHalf(kind, joint);
  const topMm = about.bottomMm + MEASURE_ROW_MM + 3;
  const { frame, scale, bottomMm } = placed([...first, ...other], topMm);
  const marks = [
    { letter: "A", place: closure.gap, said: `widest gap ${show.length(closure.gap.mm)}` },
    {
      letter: "B",
      place: closure.overlap,
      said: `wood meets wood ${show.length(closure.overlap.mm)} too early`,
    },
  ].filter(({ place }) => place.mm > NOTHING_MM);
  const lines = [
    `Scale ${scaleText(scale)}. Grey: the first half, as it was cut. Hatched: the other. Both go on beyond the drawing.`,
    ...marks.map(({ letter, said }) => `${letter}: ${said}.`),
    ...(marks.length === 0 ? ["No gap and no overlap that can be measured."] : []),
    ...offLines(joint, show),
    ...findings.map((finding) => describeJointFinding(finding, show)),
  ];
  const foot = paragraphs(lines, bottomMm + 3);
  const otherContours = profileContours(other, frame);
  const reach = {
    name: "reach",
    valueMm: closure.reachMm,
    text: `reaches ${show.length(closure.reachMm)}`,
    from: onPaper(frame, 0, highOf(first)),
    to: onPaper(frame, closure.reachMm, highOf(first)),
  };
  const items: Item[] = [
    path({ of: "first" }, profileContours(first, frame), "heavy", "pale"),
    path({ of: "other" }, otherContours, "medium"),
    hatched({ of: "other" }, otherContours, OTHER),
    ...(closure.reachMm > NOTHING_MM ? [measureAcross(reach, topMm - 3)] : []),
    ...marks.flatMap(({ letter, place }) => marked(letter, frame, place)),
  ];
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm: foot.bottomMm + MARGIN_MM,
    title: `Joint: ${name}`,
    description: lines.join(" "),
    items: [
      ...head.items,
      ...about.items,
      { kind: "group", of: "joint", label: "Section through the closed joint", frame, items },
      ...foot.items,
    ],
  };
}

function offLines({ closure: { facesOffMm, endsOffMm } }: JointDrawn["joint"], show: Show): string[] {
  const off = (what: string, mm: number) =>
    Math.abs(mm) > NOTHING_MM
      ? [`The ${what} are off by ${show.length(Math.abs(mm))}.`]
      : [`The ${what} are flush.`];
  return [...off("faces", facesOffMm), ...(endsOffMm === undefined ? [] : off("ends", endsOffMm))];
}

function firstHalf({ bit, setting }: JointHalf, isGrooved: boolean): Profile {
  const outline = formOutline(bit.form);
  return profileAfter(outline, setting, {
    sides: isGrooved ? 2 : 1,
    toleranceMm: CHORD_MM,
    depthMm: depthOf(bit, setting),
  });
}

/** How far into a half is drawn: past all that its bit can reach. */
function depthOf(bit: JointHalf["bit"], { fenceMm }: JointHalf["setting"]): number {
  return Math.max(0, bit.form.diameterMm / 2 - fenceMm) + BEYOND_MM;
}

/** The other half as it lies on the first: pushed in from the left, turned over if the joint says so; a tail on both sides of its middle. */
function otherHalf(kind: JointKind, { second, closure }: JointDrawn["joint"]): Profile {
  const { isTurnedOver, closes, isCorner } = jointDefinition(kind);
  const { bit, setting, acrossMm } = second;
  const thickMm = acrossMm ?? setting.thicknessMm;
  const depthMm = isCorner ? thickMm : closes === "slid" ? closure.reachMm : depthOf(bit, setting);
  const cut = profileAfter(formOutline(bit.form), setting, { sides: 1, toleranceMm: CHORD_MM, depthMm });
  const seen =
    (side: 1 | -1) =>
    ({ xMm, zMm }: ProfilePoint): ProfilePoint => ({
      xMm: side * (closure.reachMm - xMm),
      zMm: (isTurnedOver ? setting.thicknessMm - zMm : zMm) + closure.facesOffMm,
    });
  const sides: readonly (1 | -1)[] = closes === "slid" ? [1, -1] : [1];
  const pieces = sides.flatMap((side) =>
    cut.map(({ boundary, holes }) => ({
      boundary: boundary.map(seen(side)),
      holes: holes.map((hole) => hole.map(seen(side))),
    })),
  );
  if (closes !== "slid") return pieces;
  const half = thickMm / 2;
  const board = [
    [-half, 0],
    [half, 0],
    [half, -BEYOND_MM],
    [-half, -BEYOND_MM],
  ].map(([xMm = 0, zMm = 0]) => ({ xMm, zMm }));
  return [...pieces, { boundary: board, holes: [] }];
}

function placed(
  pieces: Profile,
  topMm: number,
): { readonly frame: Frame; readonly scale: number; readonly bottomMm: number } {
  const corners = pieces.flatMap(({ boundary }) => boundary);
  const [xs, zs] = [corners.map(({ xMm }) => xMm), corners.map(({ zMm }) => zMm)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...zs), Math.max(...zs)];
  const scale = scaleFor(
    { widthMm: right - left, heightMm: high - low },
    { widthMm: INNER_WIDTH_MM - 8, heightMm: MOST_HEIGHT_MM },
  );
  const frame = {
    originXMm: PAGE_WIDTH_MM / 2 - (scale * (left + right)) / 2,
    originYMm: topMm + scale * high,
    scaleX: scale,
    scaleY: -scale,
  };
  return { frame, scale, bottomMm: topMm + scale * (high - low) };
}

function highOf(profile: Profile): number {
  return Math.max(...profile.flatMap(({ boundary }) => boundary.map(({ zMm }) => zMm)));
}

/** A ring around a place, and its letter beside it. */
function marked(letter: string, frame: Frame, { xMm, zMm }: ProfilePoint): Item[] {
  const middle = onPaper(frame, xMm, zMm);
  const side = letter === "A" ? 1 : -1;
  const label = textLine(letter, middle.yMm - MARK_MM - 0.6, {
    xMm: middle.xMm + side * (MARK_MM + 1.6),
    anchor: "middle",
    sizeMm: SMALL_MM,
    weight: "bold",
  });
  const cross = [
    ...polyline([
      { xMm: middle.xMm - 0.5, yMm: middle.yMm },
      { xMm: middle.xMm + 0.5, yMm: middle.yMm },
    ]),
    ...polyline([
      { xMm: middle.xMm, yMm: middle.yMm - 0.5 },
      { xMm: middle.xMm, yMm: middle.yMm + 0.5 },
    ]),
  ];
  const of = letter === "A" ? "gap" : "overlap";
  return [
    path({ of }, circle(middle, MARK_MM), "medium"),
    path({ of: `${of}-place` }, cross, "thin"),
    ...cleared(label),
  ];
}
