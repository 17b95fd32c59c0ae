import type { Bit } from "@rimwise/domain";
import { FORBIDDEN, hatched } from "../drafting/hatch.ts";
import { INNER_WIDTH_MM, LEADING, MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "../drafting/page.ts";
import { scaleText } from "../drafting/scale.ts";
import { silhouette, silhouetteSize } from "../drafting/silhouette.ts";
import { heading, paragraph, paragraphs, textLine } from "../drafting/text.ts";
import { ASCENT_EM, DESCENT_EM } from "../font/metrics.ts";
import { path, polyline, rectangle } from "../scene/path.ts";
import type { Item, Scene } from "../scene/scene.ts";
import { type DrawnUnits, definePicture } from "./define.ts";

/** Where the bit of a position is. */
export type PositionState = "here" | "out" | "held" | "missing";

/** One position of a rack, and the bit that belongs there. */
export type RackPosition = {
  readonly label: string;
  readonly bit?: Bit;
  readonly name?: string;
  /** Only a position with a bit has a state that matters. */
  readonly state: PositionState;
};

/** What a rack is drawn of. */
export type RackDrawn = {
  readonly name: string;
  readonly units: DrawnUnits;
  readonly positions: readonly RackPosition[];
};

/** A rack with its bits, all at one scale. */
export const rackPicture = definePicture<"rack", RackDrawn>({
  kind: "rack",
  meaning: "The positions of a rack with their bits to scale, and which are out, held or missing.",
  draw,
});

const COLUMNS = 3;
const GAP_MM = 2;
const CELL_MM = (INNER_WIDTH_MM - (COLUMNS - 1) * GAP_MM) / COLUMNS;
/** A bit is drawn at most so high, mm of paper; all are at the scale of the largest. */
const MOST_BIT_MM = 40;
const TEXT_MM = SMALL_MM * LEADING;
const INSIDE_MM = 2;

const WORDS: Readonly<Record<PositionState, string>> = {
  here: "",
  out: "out",
  held: "held: do not use",
  missing: "missing",
};

function draw({ name, positions }: RackDrawn): Scene {
  const head = heading(name);
  const sizes = positions.flatMap(({ bit }) => (bit === undefined ? [] : [silhouetteSize(bit)]));
  const widest = Math.max(1, ...sizes.map(({ widthMm }) => widthMm));
  const highest = Math.max(1, ...sizes.map(({ heightMm }) => heightMm));
  const scale = Math.min(1, (CELL_MM - 2 * INSIDE_MM) / widest, MOST_BIT_MM / highest);
  const bitMm = scale * highest;
  const cellHeightMm = bitMm + 4 * TEXT_MM + 6;
  const about = paragraphs(
    [
      `Scale ${scaleText(scale)}. ${countsOf(positions)} Dashed: it belongs here and is not. Hatched: held, not to be used.`,
    ],
    head.bottomMm,
    { sizeMm: SMALL_MM },
  );
  const topMm = about.bottomMm + 1.5;
  const rows = Math.ceil(positions.length / COLUMNS);
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm: topMm + rows * (cellHeightMm + GAP_MM) + MARGIN_MM,
    title: `Rack: ${name}`,
    description: positions.map(sentenceOf).join(" "),
    items: [
      ...head.items,
      ...about.items,
      ...positions.map((position, index) => cell(position, index, { topMm, scale, bitMm, cellHeightMm })),
    ],
  };
}

/** What all cells share: where they begin, the scale of their bits, and the heights of the highest bit and of a cell on paper. */
type Cells = {
  readonly topMm: number;
  readonly scale: number;
  readonly bitMm: number;
  readonly cellHeightMm: number;
};

function cell(position: RackPosition, index: number, { topMm, scale, bitMm, cellHeightMm }: Cells): Item {
  const { bit, name = "", label, state } = position;
  const leftMm = MARGIN_MM + (index % COLUMNS) * (CELL_MM + GAP_MM);
  const yMm = topMm + Math.floor(index / COLUMNS) * (cellHeightMm + GAP_MM);
  const box = rectangle({ xMm: leftMm, yMm }, { xMm: leftMm + CELL_MM, yMm: yMm + cellHeightMm });
  const textStyle = { xMm: leftMm + INSIDE_MM, widthMm: CELL_MM - 2 * INSIDE_MM, sizeMm: SMALL_MM };
  const firstMm = yMm + bitMm + 4 + SMALL_MM;
  const isAway = state === "out" || state === "missing";
  const items: Item[] = [path({ of: "position", number: index + 1 }, box, isAway ? "dashed" : "thin")];
  const frame =
    bit === undefined
      ? undefined
      : {
          originXMm: leftMm + CELL_MM / 2,
          originYMm: yMm + 2.5 + bitMm - scale * silhouetteSize(bit).heightMm,
          scaleX: scale,
          scaleY: scale,
        };
  if (bit !== undefined && frame !== undefined) {
    if (state === "held") {
      const shade = rectangle({ xMm: leftMm, yMm }, { xMm: leftMm + CELL_MM, yMm: yMm + bitMm + 3 });
      items.push(hatched({ of: "held" }, shade, FORBIDDEN));
    }
    items.push(...silhouette(bit, frame, isAway ? "dashed" : "medium"));
    if (state === "missing") items.push(crossed(leftMm, yMm, bitMm));
  }
  const called = paragraph(bit === undefined ? "empty" : name, firstMm + DESCENT_EM * SMALL_MM, textStyle, 2);
  items.push(
    textLine(label, firstMm, { ...textStyle, weight: "bold" }),
    ...called.items,
    textLine(bit === undefined ? "" : WORDS[state], called.bottomMm + ASCENT_EM * SMALL_MM, {
      ...textStyle,
      weight: "bold",
    }),
  );
  return {
    kind: "group",
    of: "position",
    label: sentenceOf(position),
    ...(frame !== undefined && { frame }),
    items,
  };
}

/** Two thin lines over the place of a bit that nobody finds. */
function crossed(leftMm: number, topMm: number, bitMm: number): Item {
  const [rightMm, bottomMm] = [leftMm + CELL_MM - INSIDE_MM, topMm + bitMm + 2];
  return path(
    { of: "missing" },
    [
      ...polyline([
        { xMm: leftMm + INSIDE_MM, yMm: topMm + 2 },
        { xMm: rightMm, yMm: bottomMm },
      ]),
      ...polyline([
        { xMm: rightMm, yMm: topMm + 2 },
        { xMm: leftMm + INSIDE_MM, yMm: bottomMm },
      ]),
    ],
    "thin",
  );
}

function countsOf(positions: readonly RackPosition[]): string {
  const filled = positions.filter(({ bit }) => bit !== undefined);
  const count = (state: PositionState) => filled.filter((each) => each.state === state).length;
  return `${count("here")} here, ${count("out")} out, ${count("held")} held, ${count("missing")} missing.`;
}

function sentenceOf({ label, bit, name = "", state }: RackPosition): string {
  if (bit === undefined) return `${label}: empty.`;
  return `${label}: ${name}, ${state}.`;
}
