import { type Bit, type BitSetting, FORMS, formOutline, rimSpeedMPerS, type Show } from "@rimwise/domain";
import { MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "../../drafting/page.ts";
import { scaleText } from "../../drafting/scale.ts";
import { heading, paragraph, paragraphs } from "../../drafting/text.ts";
import type { Item, Scene } from "../../scene/scene.ts";
import { type DrawnUnits, definePicture } from "../define.ts";
import { dimensionLines } from "./dimensions.ts";
import { partInUse } from "./in-use.ts";
import { bitLayout } from "./layout.ts";
import { bitMeasures } from "./measures.ts";
import { bitShape } from "./shape.ts";
import { SPEED_SCALE_MM, speedScale } from "./speed-scale.ts";

/** What a bit is drawn of. */
export type BitDrawn = {
  readonly bit: Bit;
  /** What the shop calls it. */
  readonly name: string;
  readonly units: DrawnUnits;
  /** A setting at which the part in use is shown. */
  readonly setting?: BitSetting;
  /** A speed that is allowed, at which the rim's own is shown; never more than what is marked on the bit. */
  readonly rpm?: number;
};

/** A bit standing on its shank, to scale. */
export const bitPicture = definePicture<"bit", BitDrawn>({
  kind: "bit",
  meaning: "A bit to scale with its sizes, the part in use at a setting, and how fast the rim runs.",
  draw,
});

function draw(given: BitDrawn, show: Show): Scene {
  const { bit, name, setting } = given;
  const rpm = given.rpm === undefined ? undefined : Math.min(given.rpm, bit.markedMaxRpm ?? given.rpm);
  const outline = formOutline(bit.form);
  const title = FORMS.find(({ kind }) => kind === bit.form.kind)?.title ?? bit.form.kind;
  const head = heading(name);
  const layout = bitLayout(bit, outline, head.bottomMm + subtitleRoom(rpm));
  const under = paragraph(
    `${title}, ${bit.wings === 1 ? "1 wing" : `${bit.wings} wings`}. Scale ${scaleText(layout.scale)}.`,
    head.bottomMm,
  );
  const measures = bitMeasures(bit, outline, layout, show);
  const lines = [...dimensionLines(bit, show), ...notes(setting, rpm, layout.rimRadiusMm, show)];
  const foot = paragraphs(lines, measures.bottomMm + 1, { sizeMm: SMALL_MM });
  const items: Item[] = [
    ...head.items,
    ...under.items,
    ...(rpm === undefined ? [] : speedScale(rpm, layout, under.bottomMm, given.units)),
    {
      kind: "group",
      of: "bit",
      label: `${title} bit, side view`,
      frame: layout.frame,
      items: [
        ...bitShape(bit, outline, layout),
        ...(setting === undefined ? [] : partInUse(outline, setting, layout)),
        ...measures.items,
      ],
    },
    ...foot.items,
  ];
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm: foot.bottomMm + MARGIN_MM,
    title: `${name}: ${title}`,
    description: lines.join(" "),
    items,
  };
}

function subtitleRoom(rpm: number | undefined): number {
  return rpm === undefined ? 5 : 5 + SPEED_SCALE_MM;
}

function notes(
  setting: BitSetting | undefined,
  rpm: number | undefined,
  rimRadiusMm: number,
  show: Show,
): string[] {
  const said: string[] = [];
  if (setting !== undefined) {
    said.push(
      `Heavy line: the part that cuts with ${show.length(setting.heightMm)} of the bit standing out and its axis ${show.length(setting.fenceMm)} behind the edge.`,
    );
  }
  if (rpm !== undefined) {
    const rim = show.speed(rimSpeedMPerS(2 * rimRadiusMm, rpm));
    said.push(`At ${show.rotation(rpm)} the rim runs at ${rim}.`);
  }
  said.push("What is marked on the bit comes first. The shank is broken off: its length is not drawn.");
  return said;
}
