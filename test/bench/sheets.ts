import { PANEL_BIT, TABLE_ROUTER } from "../contract/shop.ts";
import { inMemoryShop } from "./in-memory-shop.ts";
import { ROUNDS, waits } from "./waits.ts";

const LABELS = 100;
/** As many as one request can name. */
const MOST_LABELS = 200;

const { name: _bit, notes: _notes, ...BIT } = PANEL_BIT;
const { name: _router, ...ROUTER } = TABLE_ROUTER;
const PLAN = {
  ...{ bit: BIT, router: ROUTER, mounting: "table", woodId: "black-cherry" },
  cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
};

/** Sheets over HTTP: a page of labels, a plan and a wall chart, each from one request: time, and the longest that others wait. */
export async function benchSheets(): Promise<string> {
  const { ask, close } = await inMemoryShop();
  const created = async (url: string, payload: object) =>
    (await ask("POST", url, payload)).json<{ readonly id: string }>().id;
  const ids: string[] = [];
  for (let number = 1; number <= MOST_LABELS; number += 1)
    ids.push(await created("/v1/bits", { ...PANEL_BIT, name: `Raised panel, drawer ${number}` }));
  const routerId = await created("/v1/routers", TABLE_ROUTER);
  const labels = (count: number) => `/v1/bits/labels?ids=${ids.slice(0, count).join(",")}`;
  const rows = [
    await waits(`${LABELS} labels, PDF`, () => ask("GET", `${labels(LABELS)}&format=pdf`)),
    await waits(`${LABELS} labels, HTML`, () => ask("GET", labels(LABELS))),
    await waits(`${MOST_LABELS} labels, PDF`, () => ask("GET", `${labels(MOST_LABELS)}&format=pdf`)),
    await waits("a plan on A5, PDF", () => ask("POST", "/v1/plans/printout", PLAN)),
    await waits("a plan on a card, PDF", () => ask("POST", "/v1/plans/printout?paper=index-card", PLAN)),
    await waits("a plan, text", () => ask("POST", "/v1/plans/printout?format=text", PLAN)),
    await waits(`a wall chart of ${MOST_LABELS} bits, PDF`, () =>
      ask("GET", `/v1/routers/${routerId}/printout`),
    ),
  ];
  await close();
  return [`Sheets, of ${ROUNDS} requests each`, ...rows].join("\n");
}
