import { ADVICE, type Card, type Mark, type MountingClearance, type Show, showIn } from "@rimwise/domain";
import type { DrawnUnits } from "../picture/define.ts";
import { paragraph, title } from "./block.ts";
import { flowed } from "./flow.ts";
import { landscape, PAPERS, type PaperName } from "./paper.ts";
import type { Sheet } from "./sheet.ts";
import { type Column, table } from "./table.ts";

/** One bit on a router's chart. */
export type ChartBit = {
  readonly number?: string;
  readonly name: string;
  readonly diameterMm: number;
  readonly shankDiameterMm: number;
  /** The fastest setting of this router's dial that the bit may start from; undefined when it may not run in it. */
  readonly setting: { readonly mark: Mark | undefined; readonly rpm: number } | undefined;
  readonly clearance: MountingClearance;
  /** What it is never set above, whatever the router. */
  readonly ceilingRpm: number;
};

/** What a router's chart is printed of. */
export type WallChartPrinted = {
  readonly router: string;
  readonly bits: readonly ChartBit[];
  /** Whether these are all that it takes. */
  readonly isAll: boolean;
  /** The day it was made on: a chart does not change by itself. */
  readonly asOfDay: string;
  readonly units: DrawnUnits;
  readonly paper: PaperName;
};

/** It is read from farther off than what is held in a hand. */
const ON_A_WALL = 1.2;

const CLEARED: Readonly<Record<MountingClearance, string>> = {
  handheld: "handheld or table",
  "handheld-with-care": "handheld with care, or table",
  "table-only": "table only",
};

/** The bits that a router takes, each in a row: mark, speed, how it is held, and what it never goes above. The page lies on its long side. */
export function wallChartSheet({ router, bits, isAll, asOfDay, units, paper }: WallChartPrinted): Sheet {
  const on = { ...landscape(PAPERS[paper]), textMm: PAPERS[paper].textMm * ON_A_WALL };
  const show = showIn(units);
  return flowed({
    paper: on,
    title: router,
    foot: `As of ${asOfDay}`,
    blocks: [
      title(on, router),
      paragraph(on, bits.length === 0 ? NONE : HOW_TO_READ),
      ...(bits.length === 0 ? [] : [table(on, columns(show, bits), bits)]),
      ...(isAll ? [] : [paragraph(on, NOT_ALL)]),
      paragraph(on, ADVICE, { weight: "bold" }),
    ],
  });
}

/** The same in words. */
export function wallChartCard({
  router,
  bits,
  isAll,
  asOfDay,
  units,
}: Omit<WallChartPrinted, "paper">): Card {
  const show = showIn(units);
  const rows = bits.map((bit) => {
    const { number, name, diameterMm, shankDiameterMm, setting, ceilingRpm, clearance } = bit;
    const called = number === undefined ? name : `${number} ${name}`;
    const speed = setting === undefined ? "not in this router" : `about ${show.rotation(setting.rpm)}`;
    return {
      label: markOf(setting, show),
      lines: [
        `${called}, Ø ${show.length(diameterMm)}, shank ${show.length(shankDiameterMm)}: ${speed}, never set above ${show.rotation(ceilingRpm)}; ${CLEARED[clearance]}.`,
      ],
    };
  });
  return {
    title: router,
    sections: [
      { label: "", lines: [bits.length === 0 ? NONE : HOW_TO_READ] },
      ...rows,
      { label: "", lines: isAll ? [] : [NOT_ALL] },
      { label: "as of", lines: [asOfDay] },
      { label: "first of all", lines: [ADVICE] },
    ],
  };
}

const NONE = "No bit of the rack fits this router's collets and may be used.";
const HOW_TO_READ =
  "The fastest mark to start each bit at, out of the wood. A plan of the cut may ask for less: it comes before this chart. After a bit was sharpened, inspected or tried, print the chart again.";
const NOT_ALL = "These are not all bits that this router takes: ask for the others by their ids.";

function columns(show: Show, bits: readonly ChartBit[]): Column<ChartBit>[] {
  const number: Column<ChartBit> = {
    name: "No.",
    share: 0.7,
    text: (bit) => bit.number ?? "",
    weight: "bold",
  };
  return [
    ...(bits.some((bit) => bit.number !== undefined) ? [number] : []),
    { name: "Bit", share: 3.1, text: ({ name }) => name },
    { name: "Diameter", share: 1.25, text: ({ diameterMm }) => show.length(diameterMm), anchor: "end" },
    { name: "Shank", share: 1.1, text: ({ shankDiameterMm }) => show.length(shankDiameterMm), anchor: "end" },
    {
      name: "Dial mark",
      share: 1.3,
      text: ({ setting }) => markOf(setting, show),
      weight: "bold",
      anchor: "end",
    },
    {
      name: "Speed, about",
      share: 1.5,
      text: ({ setting }) => (setting === undefined ? "" : show.rotation(setting.rpm)),
      weight: "bold",
      anchor: "end",
    },
    {
      name: "Never set above",
      share: 1.8,
      text: ({ ceilingRpm }) => show.rotation(ceilingRpm),
      anchor: "end",
    },
    { name: "How it is held", share: 1.8, text: ({ clearance }) => CLEARED[clearance] },
  ];
}

function markOf(setting: ChartBit["setting"], show: Show): string {
  if (setting === undefined) return "do not run";
  return setting.mark === undefined ? "no dial" : show.mark(setting.mark);
}
