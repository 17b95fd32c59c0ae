import type { Weight } from "../font/metrics.ts";
import { path, polyline } from "../scene/path.ts";
import type { Item } from "../scene/scene.ts";
import { type Block, type Strip, smallMm, stacked, textStrips } from "./block.ts";
import { innerWidthMm, type Paper } from "./paper.ts";

/** A column: its name, its share of the width, and how its cells are set. */
export type Column<Row> = {
  readonly name: string;
  readonly share: number;
  readonly text: (row: Row) => string;
  readonly weight?: Weight;
  /** Larger than the rest, for what is read from afar. */
  readonly sizeRatio?: number;
  readonly anchor?: "end";
};

const GAP_MM = 3.5;
const PAD_MM = 0.9;
/** Twice the height of its letters is more than any line takes: what a cell says is shortened past this share of a page. */
const MOST_OF_PAGE = 0.5;

/** Rows under a head that is repeated on each page; a row is never parted. */
export function table<Row>(paper: Paper, columns: readonly Column<Row>[], rows: readonly Row[]): Block {
  const head = rowStrip(
    paper,
    columns.map((column) => ({ column, text: column.name, of: "header-cell" as const })),
  );
  const strips = rows.map((row) =>
    rowStrip(
      paper,
      columns.map((column) => ({ column, text: column.text(row), of: "cell" as const })),
    ),
  );
  return { part: "table", head, strips, beforeMm: paper.textMm * 0.6 };
}

type Cell<Row> = {
  readonly column: Column<Row>;
  readonly text: string;
  readonly of: "header-cell" | "cell";
};

function rowStrip<Row>(paper: Paper, cells: readonly Cell<Row>[]): Strip {
  const { marginMm } = paper;
  const shares = cells.reduce((sum, { column }) => sum + column.share, 0);
  const widthMm = innerWidthMm(paper) - GAP_MM * (cells.length - 1);
  let leftMm = marginMm;
  const set = cells.map(({ column, text, of }) => {
    const ownMm = (widthMm * column.share) / shares;
    const isHead = of === "header-cell";
    const sizeMm = isHead ? smallMm(paper) : paper.textMm * (column.sizeRatio ?? 1);
    const strip = stacked(
      textStrips(text, {
        sizeMm,
        mostLines: Math.max(1, Math.floor((paper.heightMm * MOST_OF_PAGE) / (2 * sizeMm))),
        weight: isHead ? "bold" : (column.weight ?? "normal"),
        xMm: column.anchor === "end" ? leftMm + ownMm : leftMm,
        widthMm: ownMm,
        ...(column.anchor && { anchor: column.anchor }),
      }),
    );
    leftMm += ownMm + GAP_MM;
    return { of, strip };
  });
  const heightMm = Math.max(...set.map(({ strip }) => strip.heightMm)) + 2 * PAD_MM;
  const isHead = cells[0]?.of === "header-cell";
  return {
    heightMm,
    at: (topMm) => {
      const groups = set.map(
        ({ of, strip }): Item => ({ kind: "group", of, items: strip.at(topMm + PAD_MM) }),
      );
      const yMm = topMm + heightMm;
      const line = path(
        { of: "rule" },
        polyline([
          { xMm: marginMm, yMm },
          { xMm: marginMm + innerWidthMm(paper), yMm },
        ]),
        isHead ? "medium" : "thin",
      );
      return [{ kind: "group", of: "row", items: [...groups, line] }];
    },
  };
}
