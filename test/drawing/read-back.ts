import { type Frame, inWorld, type Point } from "@rimwise/drawing";
import { SaxesParser } from "saxes";

/** One drawn line with its arcs as points on them, in mm of the world its group lies in. */
export type DrawnPath = {
  /** The innermost group it is in. */
  readonly group: string;
  readonly of: string;
  readonly number: number | undefined;
  readonly rings: readonly (readonly Point[])[];
  /** Middles of arcs, which must lie on the true curve as its ends do. */
  readonly arcMiddles: readonly Point[];
};

/** A dimension: the places its arrows touch, in the world, and what it says. */
export type DrawnMeasure = {
  readonly name: string;
  readonly valueMm: number;
  readonly along: string;
  readonly tips: readonly Point[];
};

export type Drawn = {
  readonly paths: readonly DrawnPath[];
  readonly measures: readonly DrawnMeasure[];
  readonly elements: readonly {
    readonly name: string;
    readonly attributes: Readonly<Record<string, string>>;
  }[];
  readonly texts: readonly string[];
};

const WHOLE_PAGE: Frame = { originXMm: 0, originYMm: 0, scaleX: 1, scaleY: 1 };

/** Reads a drawing back with an XML parser of others (saxes); throws where it is not well formed. */
export function readBack(svgText: string): Drawn {
  const paths: DrawnPath[] = [];
  const measures: DrawnMeasure[] = [];
  const elements: { name: string; attributes: Record<string, string> }[] = [];
  const texts: string[] = [];
  const frames: Frame[] = [WHOLE_PAGE];
  const open: Record<string, string>[] = [];
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes }) => {
    elements.push({ name, attributes });
    const frame = frameIn(attributes["data-frame"]) ?? frames.at(-1) ?? WHOLE_PAGE;
    frames.push(frame);
    const measure = open.findLast((each) => each["data-measure"] !== undefined);
    open.push(attributes);
    const data = attributes["d"];
    if (name !== "path" || data === undefined) return;
    const { rings, arcMiddles } = read(data, frame);
    if (measure === undefined) {
      const number = attributes["data-number"];
      paths.push({
        group: open.findLast((each) => each["data-group"] !== undefined)?.["data-group"] ?? "",
        of: attributes["data-of"] ?? "",
        number: number === undefined ? undefined : Number(number),
        rings,
        arcMiddles,
      });
    } else if (attributes["data-of"] === "arrows") {
      measures.push({
        name: measure["data-measure"] ?? "",
        valueMm: Number(measure["data-value-mm"]),
        along: measure["data-along"] ?? "",
        tips: rings.flatMap(([tip]) => tip ?? []),
      });
    }
  });
  parser.on("text", (text) => texts.push(text));
  parser.on("closetag", () => {
    frames.pop();
    open.pop();
  });
  parser.write(svgText).close();
  return { paths, measures, elements, texts };
}

function frameIn(text: string | undefined): Frame | undefined {
  if (text === undefined) return undefined;
  const [originXMm = 0, originYMm = 0, scaleX = 1, scaleY = 1] = text.split(" ").map(Number);
  return { originXMm, originYMm, scaleX, scaleY };
}

function read(data: string, frame: Frame) {
  const rings: Point[][] = [];
  const arcMiddles: Point[] = [];
  let here: Point = { xMm: 0, yMm: 0 };
  for (const [, command, rest = ""] of data.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
    const numbers = rest.split(" ").filter(Boolean).map(Number);
    const [xMm, yMm] = numbers.slice(-2);
    if (command === "Z" || xMm === undefined || yMm === undefined) continue;
    const to = { xMm, yMm };
    if (command === "M") rings.push([]);
    if (command === "A")
      arcMiddles.push(inWorld(frame, arcMiddle(here, to, numbers[0] ?? 0, numbers[4] === 1)));
    rings.at(-1)?.push(inWorld(frame, to));
    here = to;
  }
  return { rings, arcMiddles };
}

/** The middle of an arc of at most half a turn; clockwise on paper, whose y points down (SVG 2, elliptical arcs with the sweep flag). */
function arcMiddle(from: Point, to: Point, radiusMm: number, isClockwise: boolean): Point {
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
  const chordMm = Math.hypot(dx, dy);
  const rise = radiusMm - Math.sqrt(Math.max(0, radiusMm ** 2 - (chordMm / 2) ** 2));
  const side = isClockwise ? 1 : -1;
  return {
    xMm: (from.xMm + to.xMm) / 2 + (side * rise * dy) / chordMm,
    yMm: (from.yMm + to.yMm) / 2 - (side * rise * dx) / chordMm,
  };
}
