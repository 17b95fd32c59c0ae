import { path, rectangle } from "../../scene/path.ts";
import type { GroupItem, Item, Scene } from "../../scene/scene.ts";
import type { Sheet } from "../sheet.ts";
import { type Label, labelAt } from "./label.ts";
import { STOCKS, type Stock, type StockName } from "./stock.ts";

/** What pages of labels are printed of. */
export type LabelsPrinted = {
  readonly title: string;
  readonly labels: readonly Label[];
  readonly stock: StockName;
};

/** Labels row by row on as many pages of a stock as they take; one empty page for none. */
export function labelSheet({ title, labels, stock }: LabelsPrinted): Sheet {
  const on = STOCKS[stock];
  const perPage = on.columns * on.rows;
  const count = Math.max(1, Math.ceil(labels.length / perPage));
  const pages = Array.from({ length: count }, (_, index) =>
    page(
      on,
      labels.slice(index * perPage, (index + 1) * perPage),
      `${title}, labels, page ${index + 1} of ${count}`,
    ),
  );
  return { title, pages };
}

function page(stock: Stock, labels: readonly Label[], title: string): Scene {
  const { labelWidthMm: widthMm, labelHeightMm: heightMm } = stock;
  const groups: GroupItem[] = [];
  const cuts: Item[] = [];
  labels.forEach((label, index) => {
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
    title,
    description: labels.map(({ number, title: name }) => [number, name].filter(Boolean).join(" ")).join("; "),
    items: cuts.length > 0 ? [running, ...groups] : groups,
  };
}
