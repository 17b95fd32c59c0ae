import { plain } from "../../font/plain.ts";
import { path, polyline } from "../../scene/path.ts";
import type { GroupItem, Scene } from "../../scene/scene.ts";
import { type Label, labelAt } from "./label.ts";
import { STOCKS, type Stock, type StockName } from "./stock.ts";

/** How many labels a page of a stock holds. */
export function labelsPerPage(stock: StockName): number {
  const { columns, rows } = STOCKS[stock];
  return columns * rows;
}

/** One page of labels, row by row: as many as it holds, and those after them not. */
export function labelPage(name: StockName, labels: readonly Label[], title: string): Scene {
  const stock: Stock = STOCKS[name];
  const { labelWidthMm: widthMm, labelHeightMm: heightMm } = stock;
  const shown = labels.slice(0, labelsPerPage(name));
  const groups: GroupItem[] = [];
  shown.forEach((label, index) => {
    const xMm = stock.leftMm + (index % stock.columns) * stock.stepXMm;
    const yMm = stock.topMm + Math.floor(index / stock.columns) * stock.stepYMm;
    groups.push(labelAt(label, { xMm, yMm, widthMm, heightMm }));
  });
  return {
    widthMm: stock.paper.widthMm,
    heightMm: stock.paper.heightMm,
    title: plain(title),
    description: shown
      .map(({ number, title: called }) => [number, called].filter(Boolean).join(" "))
      .join("; "),
    items: stock.isCut ? [cutLines(stock, shown.length), ...groups] : groups,
  };
}

/** Lines to cut along, each once, around as many rows as have labels. */
function cutLines(stock: Stock, count: number): GroupItem {
  const { leftMm, topMm, stepXMm, stepYMm, columns } = stock;
  const rows = Math.ceil(count / columns);
  const [rightMm, bottomMm] = [leftMm + columns * stepXMm, topMm + rows * stepYMm];
  const across = Array.from({ length: rows + 1 }, (_, row) => topMm + row * stepYMm).flatMap((yMm) =>
    polyline([
      { xMm: leftMm, yMm },
      { xMm: rightMm, yMm },
    ]),
  );
  const down = Array.from({ length: columns + 1 }, (_, column) => leftMm + column * stepXMm).flatMap((xMm) =>
    polyline([
      { xMm, yMm: topMm },
      { xMm, yMm: bottomMm },
    ]),
  );
  const lines = count === 0 ? [] : [...across, ...down];
  return { kind: "group", of: "running", items: [path({ of: "cut" }, lines, "dashed")] };
}
