import { type Client, type Cut, createClient, type PanelsRequest, type PlanRequest } from "@rimwise/client";
import { classAtWork } from "./class.ts";
import { dayInTheCrib, historyOf } from "./crib.ts";
import { kitchenOfDoors } from "./kitchen.ts";
import { panelLines, tableLines } from "./lists.ts";
import { picturesOf } from "./pictures.ts";
import { startService } from "./service.ts";
import { BITS, ROUTERS, WOOD_IDS } from "./shop.ts";

type BitPlace = keyof typeof BITS;
type RouterPlace = keyof typeof ROUTERS;

const PANEL: Cut = {
  kind: "panel",
  work: { lengthMm: 460, widthMm: 310, thicknessMm: 19, count: 2, faceDown: "best" },
  edges: [
    { lengthMm: 310, grain: "end" },
    { lengthMm: 460, grain: "long" },
    { lengthMm: 310, grain: "end" },
    { lengthMm: 460, grain: "long" },
  ],
};
const SHELF_DADO: Cut = {
  kind: "groove",
  depthMm: 9.5,
  work: { lengthMm: 900, widthMm: 400, thicknessMm: 22 },
  edges: [{ lengthMm: 400, grain: "across" }],
};
const TABLE_EDGE: Cut = {
  kind: "edge",
  work: { lengthMm: 900, widthMm: 600, thicknessMm: 22 },
  guide: "bearing",
  edges: [
    { lengthMm: 600, grain: "end" },
    { lengthMm: 900, grain: "long" },
  ],
};

const QUESTIONS: readonly {
  readonly title: string;
  readonly bit: BitPlace;
  readonly router: RouterPlace;
  readonly rest: Pick<PlanRequest, "mounting" | "woodId" | "cut">;
}[] = [
  {
    title: "A raised cherry panel, the 3-1/2 in bit in the table",
    bit: "panelCove",
    router: "table",
    rest: { mounting: "table", woodId: "black-cherry", cut: PANEL },
  },
  {
    title: "The same bit in a handheld router",
    bit: "panelCove",
    router: "plunge",
    rest: { mounting: "handheld", woodId: "black-cherry", cut: PANEL },
  },
  {
    title: "A dado in maple with the heavy 2 in straight bit, in the table",
    bit: "straightWide",
    router: "table",
    rest: { mounting: "table", woodId: "sugar-maple", cut: SHELF_DADO },
  },
  {
    title: "A small round-over in walnut, handheld",
    bit: "roundOverSmall",
    router: "trimmer",
    rest: { mounting: "handheld", woodId: "black-walnut", cut: TABLE_EDGE },
  },
  {
    title: "The 3-1/2 in bit in a router that cannot go slow enough",
    bit: "panelCove",
    router: "fixed",
    rest: { mounting: "table", woodId: "black-cherry", cut: PANEL },
  },
];

const service = await startService();
try {
  const { baseUrl } = service;
  const clientWith = (key: string) => createClient({ baseUrl, key });
  await demonstrate(clientWith(service.key), clientWith);
} finally {
  await service.stop();
}

async function demonstrate(client: Client, clientWith: (key: string) => Client): Promise<void> {
  say(`Alder Lane Joinery (an invented shop) on ${service.baseUrl}, records in ${service.database}`);
  const woods = await Promise.all(WOOD_IDS.map((id) => client.woods.get(id)));
  const bitIds = await fill(BITS, client.bits.create);
  const routerIds = await fill(ROUTERS, client.routers.create);
  say(`Woods: ${woods.map(({ name }) => name).join(", ")}`);
  say(`The rack: ${names(BITS).join("; ")}`);
  say(`The routers: ${names(ROUTERS).join("; ")}\n`);

  for (const { title, bit, router, rest } of QUESTIONS) {
    const asked = { bit: { id: idOf(bitIds, bit) }, router: { id: idOf(routerIds, router) }, ...rest };
    const card = await client.plans.print(asked, { query: { format: "text" } });
    say(`${title}\n${await card.text()}`);
  }

  say("\nPanels for two kinds of cherry door, through a year of 30 to 60 % relative humidity:");
  const doors: PanelsRequest = {
    woodId: "black-cherry",
    sawn: "flat",
    moisture: { percent: 7 },
    climate: {
      driest: { relativeHumidityPercent: 30, temperatureC: 21 },
      wettest: { relativeHumidityPercent: 60, temperatureC: 21 },
    },
    groove: { depthMm: 10, widthMm: 6.5 },
    thicknessMm: 16,
    openings: [
      { name: "upper door", count: 2, widthMm: 290, heightMm: 440 },
      { name: "lower door", count: 2, widthMm: 380, heightMm: 560 },
    ],
    bit: { id: idOf(bitIds, "panelCove") },
    router: { id: idOf(routerIds, "table") },
    mounting: "table",
  };
  say(panelLines(await client.panels.size(doors)));

  say("\nThe rack in every router, each bit at the cut it is made for, in maple, in a table:");
  const table = await client.plans.tabulate({
    bitIds: [...bitIds.values()],
    routerIds: [...routerIds.values()],
    woodIds: ["sugar-maple"],
    mounting: "table",
  });
  say(tableLines(table, namesById(BITS, bitIds), namesById(ROUTERS, routerIds)));
  const stage = {
    bitId: idOf(bitIds, "panelCove"),
    routerId: idOf(routerIds, "table"),
    rest: { mounting: "table", woodId: "black-cherry", cut: PANEL },
  } as const;
  say("\nA day in the tool crib:");
  for (const line of await dayInTheCrib(client, stage)) say(`  ${line}`);
  say("\nA class at work:");
  for (const line of await classAtWork(client, clientWith, stage)) say(`  ${line}`);
  say("\nA kitchen, from a list of parts to a day's work:");
  const kitchen = { routerId: stage.routerId, panelBitId: idOf(bitIds, "panelOgee") };
  for (const line of await kitchenOfDoors(client, kitchen)) say(`  ${line}`);
  say("\nPictures and sheets of all this:");
  const { bitId, routerId, rest } = stage;
  const pictured = {
    plan: { bit: { id: bitId }, router: { id: routerId }, ...rest },
    panels: doors,
    bitId,
    routerId,
  };
  for (const line of await picturesOf(client, pictured)) say(`  ${line}`);
  say("\nThe history of the 3-1/2 in bit:");
  for (const line of await historyOf(client, stage.bitId)) say(`  ${line}`);
  say(
    "\nThis is advice from a calculation. Markings, manuals, local codes and the person in charge come first.",
  );
}

/** Puts every record on the service's books; the ids by the demonstration's own short names. */
async function fill<Record extends { readonly name: string }>(
  records: Readonly<{ [place: string]: Record }>,
  create: (record: Record) => Promise<{ readonly id: string }>,
): Promise<ReadonlyMap<string, string>> {
  const ids = new Map<string, string>();
  for (const [place, record] of Object.entries(records)) ids.set(place, (await create(record)).id);
  return ids;
}

function idOf(ids: ReadonlyMap<string, string>, place: string): string {
  const id = ids.get(place);
  if (id === undefined) throw new Error(`nothing was created as ${place}`);
  return id;
}

function names(records: Readonly<{ [place: string]: { readonly name: string } }>): string[] {
  return Object.values(records).map(({ name }) => name);
}

function namesById(
  records: Readonly<{ [place: string]: { readonly name: string } }>,
  ids: ReadonlyMap<string, string>,
): ReadonlyMap<string, string> {
  return new Map(Object.entries(records).map(([place, { name }]) => [idOf(ids, place), name]));
}

function say(text: string): void {
  process.stdout.write(`${text}\n`);
}
