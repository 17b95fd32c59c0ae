import { ADVICE, type Card, type Show, showIn, type Verdict, verdictTitle } from "@rimwise/domain";
import { minutesText } from "../drafting/minutes.ts";
import type { DaySetupDrawn } from "../picture/day.ts";
import type { DrawnUnits } from "../picture/define.ts";
import { path, rectangle } from "../scene/path.ts";
import { type Block, heading, listed, paragraph, smallMm, textStrips, title } from "./block.ts";
import { flowed } from "./flow.ts";
import { innerWidthMm, isBrief, PAPERS, type Paper, type PaperName } from "./paper.ts";
import type { Sheet } from "./sheet.ts";

/** What is fetched before a day, and where it is. */
export type FetchPrinted = { readonly name: string; readonly where: string };

/** What a day is printed of. */
export type DayPrinted = {
  readonly name: string;
  readonly verdict: Verdict;
  readonly findings: readonly string[];
  /** What a careful teacher says of its cuts, each sentence once. */
  readonly cautions: readonly string[];
  readonly fetch: readonly FetchPrinted[];
  readonly setups: readonly DaySetupDrawn[];
  readonly madeFrom: string;
  readonly units: DrawnUnits;
  readonly paper: PaperName;
};

/** A job's day on paper: what to mind, what to fetch, and its set-ups in order, each with a box to tick. One that must not be run has no set-up. */
export function daySheet(given: DayPrinted): Sheet {
  const paper = PAPERS[given.paper];
  const { name, verdict, findings, cautions, fetch, setups, madeFrom } = given;
  const show = showIn(given.units);
  const isSmall = isBrief(paper);
  const start = [
    title(paper, name),
    paragraph(paper, `${verdictTitle(verdict)}. ${verdict === "do-not-run" ? NOT_RUN : lasts(setups)}`, {
      weight: "bold",
    }),
    ...listed(paper, verdict === "do-not-run" ? "Why not" : "What asks for care", findings),
  ];
  const advice = paragraph(paper, ADVICE, { weight: "bold", isSmall });
  const rest =
    verdict === "do-not-run"
      ? [advice]
      : [
          ...listed(paper, "Cautions", cautions),
          advice,
          ...listed(
            paper,
            "To fetch, and to bring back",
            fetch.map((each) => `${each.name}: ${each.where}`),
          ),
          heading(paper, "Set-ups in order"),
          ...setups.map((setup, index) => setupBlock(paper, setup, index + 1, show)),
        ];
  return flowed({ paper, title: name, foot: madeFrom, blocks: [...start, ...rest] });
}

/** The same in words. */
export function dayCard({
  name,
  verdict,
  findings,
  cautions,
  fetch,
  setups,
  madeFrom,
  units,
}: Omit<DayPrinted, "paper">): Card {
  const show = showIn(units);
  const isRun = verdict !== "do-not-run";
  const verdictLines = [verdictTitle(verdict).toUpperCase(), isRun ? lasts(setups) : NOT_RUN, ...findings];
  const advice = { label: "first of all", lines: [ADVICE] };
  const made = { label: "made from", lines: [madeFrom] };
  if (!isRun) return { title: name, sections: [{ label: "verdict", lines: verdictLines }, advice, made] };
  return {
    title: name,
    sections: [
      { label: "verdict", lines: verdictLines },
      { label: "mind", lines: cautions },
      advice,
      { label: "to fetch", lines: fetch.map((each) => `${each.name}: ${each.where}`) },
      {
        label: "set-ups",
        lines: setups.map(
          (setup, index) =>
            `${index + 1}. ${setup.bitName}, ${setup.station}. ${settingOf(setup, show)}. ${cutOf(setup)}`,
        ),
      },
      made,
    ],
  };
}

const NOT_RUN = "Something in it must not be run: it has no set-ups until that is mended.";
const TICK_MM = 4;

/** A set-up: a box to tick, its bit, what is set in bold, and what is cut. */
function setupBlock(paper: Paper, setup: DaySetupDrawn, number: number, show: Show): Block {
  const { marginMm, textMm } = paper;
  const hangMm = TICK_MM + textMm;
  const common = { xMm: marginMm + hangMm, widthMm: innerWidthMm(paper) - hangMm };
  const { bitName, station } = setup;
  const small = { ...common, sizeMm: smallMm(paper) };
  const strips = [
    ...textStrips(`${number}. ${bitName}, ${station}`, { ...common, sizeMm: textMm }),
    ...textStrips(settingOf(setup, show), { ...common, sizeMm: textMm, weight: "bold" }),
    ...textStrips(cutOf(setup), small),
  ];
  const [first = { heightMm: 0, at: () => [] }, ...rest] = strips;
  const ticked = {
    heightMm: first.heightMm,
    at: (topMm: number) => [
      path(
        { of: "tick" },
        rectangle({ xMm: marginMm, yMm: topMm }, { xMm: marginMm + TICK_MM, yMm: topMm + TICK_MM }),
        "medium",
      ),
      ...first.at(topMm),
    ],
  };
  return { part: "list-item", strips: [ticked, ...rest], beforeMm: textMm * 0.7, isWhole: true };
}

function settingOf({ mark, rpm, cutterMm, fenceMm }: DaySetupDrawn, show: Show): string {
  const speed =
    mark === undefined
      ? `no dial, about ${show.rotation(rpm)}`
      : `mark ${show.mark(mark)}, about ${show.rotation(rpm)}`;
  const fence = fenceMm === undefined ? "" : `; bit's centre to fence ${show.length(fenceMm)}`;
  return `${speed[0]?.toUpperCase()}${speed.slice(1)}; ${show.length(cutterMm)} of the cutter out${fence}`;
}

function cutOf({ cuts, parts, changeMin, workMin }: DaySetupDrawn): string {
  return `${cuts}: ${parts} ${parts === 1 ? "part" : "parts"}. Changing over ${minutesText(changeMin)}, cutting ${minutesText(workMin)}.`;
}

function lasts(setups: readonly DaySetupDrawn[]): string {
  const total = setups.reduce((sum, { changeMin, workMin }) => sum + changeMin + workMin, 0);
  return `${setups.length} ${setups.length === 1 ? "set-up" : "set-ups"}, about ${minutesText(total)}; nothing of it is measured.`;
}
