import { plain } from "../../font/plain.ts";
import { path, rectangle } from "../../scene/path.ts";
import type { GroupItem, Item, Scene } from "../../scene/scene.ts";
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
  const groups: GroupItem[] = [];
  const cuts: Item[] = [];
  labels.slice(0, labelsPerPage(name)).forEach((label, index) => {
    const xMm = stock.leftMm + (index % stock.columns) * stock.stepXMm;
    const yMm = stock.topMm + Math.floor(index / stock.columns) * stock.stepYMm;
    groups.push(labelAt(label, { xMm, yMm, widthMm, heightMm }));
    if (stock.isCut)
      cuts.push(
        path({ of: "cut" }, rectangle({ xMm, yMm }, { xMm: xMm + widthMm, yMm: yMm + heightMm }), "dashed"),
      );
  });
  const running: GroupItem = { kind: "group", of: "running", items: cuts };
  return {
    widthMm: stock.paper.widthMm,
    heightMm: stock.paper.heightMm,
    title: plain(title),
    description: labels.map(({ number, title: name }) => [number, name].filter(Boolean).join(" ")).join("; "),
    items: cuts.length > 0 ? [running, ...groups] : groups,
  };
}
