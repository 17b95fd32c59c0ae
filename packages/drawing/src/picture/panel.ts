import {
  type Bit,
  describePanelFinding,
  formDiameterMm,
  formOutline,
  PANEL_VERDICT_MEANINGS,
  type PanelDimension,
  type Profile,
  profileAfter,
  roundTo,
  type Show,
  type SideState,
  type SizedPanel,
} from "@rimwise/domain";
import { hatched } from "../drafting/hatch.ts";
import { MEASURE_ROW_MM, measureAcross } from "../drafting/measure.ts";
import { INNER_WIDTH_MM, MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "../drafting/page.ts";
import { CHORD_MM, profileContours } from "../drafting/profile-contours.ts";
import { scaleFor, scaleText } from "../drafting/scale.ts";
import { heading, paragraphs, type Rows, textLine } from "../drafting/text.ts";
import { type Frame, onPaper } from "../scene/frame.ts";
import { path } from "../scene/path.ts";
import type { Item, Scene } from "../scene/scene.ts";
import { type DrawnUnits, definePicture } from "./define.ts";

/** What a panel in its frame is drawn of. */
export type PanelDrawn = {
  readonly panel: SizedPanel;
  readonly groove: { readonly depthMm: number; readonly widthMm: number };
  readonly thicknessMm: number;
  /** The bit that raises its edges and its setting; absent of a flat panel. */
  readonly raising?: { readonly bit: Bit; readonly heightMm: number; readonly fenceMm: number };
  readonly name: string;
  readonly units: DrawnUnits;
};

/** A panel's edges in their grooves at both ends of the year. */
export const panelPicture = definePicture<"panel", PanelDrawn>({
  kind: "panel",
  meaning: "A panel's edges in the grooves of its frame, at the driest and the wettest of the year.",
  draw,
});

/** Wood moves by tenths of a millimetre: more would say what nobody can measure. */
const SHOWN_DECIMALS = 1;

/** Wood of the frame around the groove, and of the panel inside the frame and past its raised border, mm in the world. */
const FRAME_MM = 8;
const INSIDE_MM = 12;
const PAST_BORDER_MM = 6;
const COLUMN_GAP_MM = 6;
const COLUMN_MM = (INNER_WIDTH_MM - COLUMN_GAP_MM) / 2;
const MOST_HEIGHT_MM = 44;
const FRAME = { anglesDeg: [45], spacingMm: 1.8, line: "thin" as const };

function draw(given: PanelDrawn, show: Show): Scene {
  const { panel, name } = given;
  const head = heading(name);
  const scale = scaleOf(given);
  const cut = `Cut it ${show.length(panel.width.cutMm)} wide and ${show.length(panel.height.cutMm)} high. Scale ${scaleText(scale)}.`;
  const reasons = panel.findings.map((finding) => describePanelFinding(finding, show));
  const about = paragraphs([PANEL_VERDICT_MEANINGS[panel.verdict], cut], head.bottomMm);
  const width = bothEnds("width", panel.width, given, scale, about.bottomMm + 1, show);
  const height = bothEnds("height", panel.height, given, scale, width.bottomMm + 2, show);
  const foot = paragraphs(
    ["Each end of the panel is like the one drawn: it is held in the middle.", ...reasons],
    height.bottomMm + 1,
    {
      sizeMm: SMALL_MM,
    },
  );
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm: foot.bottomMm + MARGIN_MM,
    title: `Panel in its frame: ${name}`,
    description: [PANEL_VERDICT_MEANINGS[panel.verdict], cut, ...reasons].join(" "),
    items: [...head.items, ...about.items, ...width.items, ...height.items, ...foot.items],
  };
}

/** One dimension: its edge at the driest on the left, at the wettest on the right. */
function bothEnds(
  side: "width" | "height",
  dimension: PanelDimension,
  given: PanelDrawn,
  scale: number,
  topMm: number,
  show: Show,
): Rows {
  const grain =
    dimension.moves === "across-grain" ? "across the grain, where it moves most" : "along the grain";
  const title = paragraphs([`${side === "width" ? "Width" : "Height"}: ${grain}`], topMm, { weight: "bold" });
  const ends = (["driest", "wettest"] as const).map((when, index) =>
    edgeInGroove(
      { side, when, state: dimension[when], leftMm: MARGIN_MM + index * (COLUMN_MM + COLUMN_GAP_MM) },
      given,
      scale,
      title.bottomMm,
      show,
    ),
  );
  return {
    items: [...title.items, ...ends.flatMap(({ items }) => items)],
    bottomMm: Math.max(...ends.map(({ bottomMm }) => bottomMm)),
  };
}

type End = {
  readonly side: "width" | "height";
  readonly when: "driest" | "wettest";
  readonly state: SideState;
  readonly leftMm: number;
};

/** x of the frame is 0 at the frame's inside edge, into the panel; z is 0 at the panel's face. */
function edgeInGroove(
  { side, when, state, leftMm }: End,
  given: PanelDrawn,
  scale: number,
  topMm: number,
  show: Show,
): Rows {
  const { groove } = given;
  const { lowMm, highMm } = heightOf(given);
  const drawnTopMm = topMm + SMALL_MM * 1.4 + 2 * MEASURE_ROW_MM;
  const frame: Frame = {
    originXMm: leftMm + scale * (groove.depthMm + FRAME_MM),
    originYMm: drawnTopMm + scale * highMm,
    scaleX: scale,
    scaleY: -scale,
  };
  const stile = profileContours(stileOf(given), frame);
  const panel = profileContours(panelOf(given), frame, ({ xMm, zMm }) => ({
    xMm: xMm - state.engagementMm,
    zMm,
  }));
  const across = (name: string, valueMm: number, from: number, to: number, row: number) =>
    measureAcross(
      {
        name,
        valueMm,
        text: show.length(roundTo(valueMm, SHOWN_DECIMALS)),
        from: onPaper(frame, from, highMm),
        to: onPaper(frame, to, highMm),
      },
      topMm + SMALL_MM * 1.4 + row * MEASURE_ROW_MM - 1,
    );
  const said = `${when === "driest" ? "Driest" : "Wettest"}: gap, then cover`;
  const items: Item[] = [
    path({ of: "frame" }, stile, "medium"),
    hatched({ of: "frame" }, stile, FRAME),
    path({ of: "panel" }, panel, "heavy", "pale"),
    ...(state.gapMm > 0
      ? [across(`${side}-${when}-gap`, state.gapMm, -groove.depthMm, -state.engagementMm, 1)]
      : []),
    ...(state.engagementMm > 0
      ? [across(`${side}-${when}-cover`, state.engagementMm, -state.engagementMm, 0, 2)]
      : []),
  ];
  const group: Item = {
    kind: "group",
    of: `${side}-${when}`,
    label: `${side} at the ${when} of the year`,
    frame,
    items,
  };
  return {
    items: [textLine(said, topMm + SMALL_MM, { xMm: leftMm, widthMm: COLUMN_MM, sizeMm: SMALL_MM }), group],
    bottomMm: drawnTopMm + scale * (highMm - lowMm) + 2,
  };
}

function scaleOf(given: PanelDrawn): number {
  const { lowMm, highMm } = heightOf(given);
  return scaleFor(
    { widthMm: FRAME_MM + given.groove.depthMm + drawnDepthMm(given), heightMm: highMm - lowMm },
    { widthMm: COLUMN_MM, heightMm: MOST_HEIGHT_MM },
  );
}

function heightOf({ groove, thicknessMm, panel, raising }: PanelDrawn) {
  const middleMm = middleOf(panel, thicknessMm, raising !== undefined);
  return {
    lowMm: Math.min(0, middleMm - groove.widthMm / 2 - FRAME_MM),
    highMm: Math.max(thicknessMm, middleMm + groove.widthMm / 2 + FRAME_MM),
  };
}

/** A flat panel sits in the groove by its middle, a raised one by its tongue, which lies at its back face. */
function middleOf({ tongue }: SizedPanel, thicknessMm: number, isRaised: boolean): number {
  return isRaised ? thicknessMm - tongue.thicknessMm / 2 : thicknessMm / 2;
}

function stileOf(given: PanelDrawn): Profile {
  const { groove, thicknessMm, panel, raising } = given;
  const { lowMm, highMm } = heightOf(given);
  const middleMm = middleOf(panel, thicknessMm, raising !== undefined);
  const [fromMm, toMm] = [middleMm - groove.widthMm / 2, middleMm + groove.widthMm / 2];
  const backMm = -groove.depthMm - FRAME_MM;
  const corners = [
    [backMm, lowMm],
    [0, lowMm],
    [0, fromMm],
    [-groove.depthMm, fromMm],
    [-groove.depthMm, toMm],
    [0, toMm],
    [0, highMm],
    [backMm, highMm],
  ];
  return [{ boundary: corners.map(([xMm = 0, zMm = 0]) => ({ xMm, zMm })), holes: [] }];
}

/** From its edge into it, as far as is drawn. */
function panelOf(given: PanelDrawn): Profile {
  const { thicknessMm, raising } = given;
  const depthMm = drawnDepthMm(given);
  if (raising === undefined) {
    const corners = [
      [0, 0],
      [depthMm, 0],
      [depthMm, thicknessMm],
      [0, thicknessMm],
    ];
    return [{ boundary: corners.map(([xMm = 0, zMm = 0]) => ({ xMm, zMm })), holes: [] }];
  }
  const { bit, heightMm, fenceMm } = raising;
  return profileAfter(
    formOutline(bit.form),
    { heightMm, fenceMm, thicknessMm },
    { sides: 1, toleranceMm: CHORD_MM, depthMm },
  );
}

function drawnDepthMm({ groove, raising }: PanelDrawn): number {
  const flatMm = groove.depthMm + INSIDE_MM;
  if (raising === undefined) return flatMm;
  return Math.max(flatMm, formDiameterMm(raising.bit.form) / 2 - raising.fenceMm + PAST_BORDER_MM);
}
