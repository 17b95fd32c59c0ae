import { fitted } from "../font/fit.ts";
import { ASCENT_EM } from "../font/metrics.ts";
import type { GroupItem, Item, Scene } from "../scene/scene.ts";
import { textsOf } from "../scene/text-box.ts";
import { type Block, type Strip, smallMm } from "./block.ts";
import type { Paper } from "./paper.ts";
import type { Sheet, SheetPart } from "./sheet.ts";

/** What a sheet is, beside its blocks. `foot` stands at the foot of each page. */
export type Flowing = {
  readonly paper: Paper;
  readonly title: string;
  readonly foot: string;
  readonly blocks: readonly Block[];
};

/** A page as it is filled: groups, and where the next may begin. */
type Filling = { readonly groups: GroupItem[]; bottomMm: number };

/** At least so many lines of a paragraph stand on a page, before and after it is parted. */
const TOGETHER = 2;

/** Lays blocks on as many pages as they take, in their order. What is higher than a page leaves it; nothing is left out. */
export function flowed({ paper, title, foot, blocks }: Flowing): Sheet {
  const topMm = (page: number) => paper.marginMm + (page === 0 ? 0 : runningMm(paper));
  const endMm = paper.heightMm - paper.marginMm - runningMm(paper);
  const pages: Filling[] = [{ groups: [], bottomMm: topMm(0) }];
  const last = () => pages.at(-1) ?? { groups: [], bottomMm: topMm(0) };
  const turn = () => pages.push({ groups: [], bottomMm: topMm(pages.length) });
  const leftMm = (beforeMm: number) => endMm - last().bottomMm - (last().groups.length > 0 ? beforeMm : 0);

  blocks.forEach((block, index) => {
    if (block.strips.length === 0) return;
    const needMm = firstOf(block) + (block.keepsNext ? Math.max(0, nextOf(blocks, index)) : 0);
    if (needMm > leftMm(block.beforeMm) && last().groups.length > 0) turn();
    let rest = block.strips;
    while (rest.length > 0) {
      const page = last();
      const { head } = block;
      const count = fitting(rest, leftMm(block.beforeMm) - (head?.heightMm ?? 0), rest === block.strips);
      if (count === 0 && page.groups.length > 0) {
        turn();
        continue;
      }
      const taken = rest.slice(0, Math.max(1, count));
      set(page, block, head === undefined ? taken : [head, ...taken]);
      rest = rest.slice(taken.length);
      if (rest.length > 0) turn();
    }
  });
  return {
    title,
    pages: pages.map((page, index) => finished(page, index, pages.length, { paper, title, foot })),
  };
}

/** What of a block must stand together at its start. */
function firstOf({ strips, head, isWhole }: Block): number {
  const counted = isWhole ? strips : strips.slice(0, TOGETHER);
  return (head?.heightMm ?? 0) + counted.reduce((sum, { heightMm }) => sum + heightMm, 0);
}

/** As much of what comes after a block that keeps it. */
function nextOf(blocks: readonly Block[], index: number): number {
  const next = blocks.slice(index + 1).find(({ strips }) => strips.length > 0);
  if (next === undefined) return 0;
  return next.beforeMm + firstOf(next) + (next.keepsNext ? nextOf(blocks, blocks.indexOf(next)) : 0);
}

/** How many strips fit, without leaving one alone behind. */
function fitting(strips: readonly Strip[], roomMm: number, isStart: boolean): number {
  let [count, heightMm] = [0, 0];
  for (const strip of strips) {
    heightMm += strip.heightMm;
    if (heightMm > roomMm + SLACK_MM) break;
    count += 1;
  }
  if (count === strips.length) return count;
  const kept = strips.length - count < TOGETHER ? strips.length - TOGETHER : count;
  return isStart && kept < TOGETHER && strips.length > TOGETHER ? 0 : Math.max(0, kept);
}

/** Sums of heights are not exact. */
const SLACK_MM = 1e-6;

function set(page: Filling, { part, beforeMm, label }: Block, strips: readonly Strip[]): void {
  if (page.groups.length > 0) page.bottomMm += beforeMm;
  const items: Item[] = [];
  for (const { heightMm, at } of strips) {
    items.push(...at(page.bottomMm));
    page.bottomMm += heightMm;
  }
  if (items.length > 0)
    page.groups.push({ kind: "group", of: part, ...(label !== undefined && { label }), items });
}

type Named = Pick<Flowing, "paper" | "title" | "foot">;

/** What every page after the first repeats takes, and the foot of each. */
function runningMm(paper: Paper): number {
  return smallMm(paper) * RUNNING_RATIO;
}

const RUNNING_RATIO = 2.2;

/** A page with what it repeats: the title at its head, what it belongs to and its number at its foot. */
function finished({ groups }: Filling, index: number, count: number, named: Named): Scene {
  const { paper, title, foot } = named;
  const { widthMm, heightMm, marginMm } = paper;
  const number = count === 1 ? "" : `page ${index + 1} of ${count}${index + 1 < count ? ", goes on" : ""}`;
  const footMm = heightMm - marginMm;
  const running: Item[] = [
    ...(index === 0 ? [] : [line(title, marginMm + ASCENT_EM * smallMm(paper), "start", 1, paper)]),
    line(foot, footMm, "start", FOOT_SHARE, paper),
    line(number, footMm, "end", 1 - FOOT_SHARE, paper),
  ].filter(({ text }) => text !== "");
  const description = groups.flatMap((group) => textsOf(group).map(({ text }) => text)).join(" ");
  return {
    widthMm,
    heightMm,
    title: count === 1 ? title : `${title}, page ${index + 1} of ${count}`,
    description,
    items: [...groups, { kind: "group", of: "running" satisfies SheetPart, items: running }],
  };
}

/** As much of the foot as what a sheet belongs to may take; the rest is the page's number. */
const FOOT_SHARE = 0.74;

function line(given: string, yMm: number, anchor: "start" | "end", share: number, paper: Paper) {
  const { widthMm, marginMm } = paper;
  const sizeMm = smallMm(paper);
  const room = { widthMm: (widthMm - 2 * marginMm) * share - sizeMm, sizeMm, weight: "normal" as const };
  const { text, whole } = fitted(given, room);
  const xMm = anchor === "start" ? marginMm : widthMm - marginMm;
  return {
    kind: "text" as const,
    xMm,
    yMm,
    sizeMm,
    anchor,
    weight: "normal" as const,
    text,
    ...(whole !== undefined && { whole }),
  };
}
