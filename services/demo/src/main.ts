import { type Cut, createClient, type PlanRequest } from "@rimwise/client";
import { planCard } from "./card.ts";
import { startService } from "./service.ts";
import { BITS, ROUTERS, WOOD_IDS } from "./shop.ts";

const PANEL: Cut = {
  kind: "panel",
  thicknessMm: 19,
  edges: [
    { lengthMm: 310, grain: "end" },
    { lengthMm: 460, grain: "long" },
    { lengthMm: 310, grain: "end" },
    { lengthMm: 460, grain: "long" },
  ],
};
const SHELF_DADO: Cut = { kind: "groove", depthMm: 9.5, edges: [{ lengthMm: 400, grain: "end" }] };
const TABLE_EDGE: Cut = {
  kind: "edge",
  thicknessMm: 22,
  edges: [
    { lengthMm: 600, grain: "end" },
    { lengthMm: 900, grain: "long" },
  ],
};

const service = await startService();
try {
  await demonstrate();
} finally {
  await service.stop();
}

async function demonstrate(): Promise<void> {
  const client = createClient({ baseUrl: service.baseUrl, key: service.key });
  say(`Alder Lane Joinery (an invented shop) on ${service.baseUrl}, records in ${service.database}`);
  const woods = await Promise.all(WOOD_IDS.map((id) => client.woods.get(id)));
  say(`Woods: ${woods.map(({ name }) => name).join(", ")}`);
  const bitIds = new Map<string, string>();
  for (const [place, bit] of Object.entries(BITS)) bitIds.set(place, (await client.bits.create(bit)).id);
  const routerIds = new Map<string, string>();
  for (const [place, router] of Object.entries(ROUTERS)) {
    routerIds.set(place, (await client.routers.create(router)).id);
  }
  say(
    `The rack: ${Object.values(BITS)
      .map(({ name }) => name)
      .join("; ")}`,
  );
  say(
    `The routers: ${Object.values(ROUTERS)
      .map(({ name }) => name)
      .join("; ")}\n`,
  );

  const ask = (
    bit: keyof typeof BITS,
    router: keyof typeof ROUTERS,
    rest: Pick<PlanRequest, "mounting" | "woodId" | "cut">,
  ) =>
    client.plans.preview({
      bit: { id: bitIds.get(bit) ?? "" },
      router: { id: routerIds.get(router) ?? "" },
      ...rest,
    });

  const cherryPanel = { woodId: "black-cherry", cut: PANEL };
  say(
    planCard(
      "A raised cherry panel, the 3-1/2 in bit in the table",
      await ask("panelCove", "table", { ...cherryPanel, mounting: "table" }),
    ),
  );
  say(
    planCard(
      "The same bit in a handheld router",
      await ask("panelCove", "plunge", { ...cherryPanel, mounting: "handheld" }),
    ),
  );
  say(
    planCard(
      "A dado in maple with the heavy 2 in straight bit, in the table",
      await ask("straightWide", "table", { woodId: "sugar-maple", cut: SHELF_DADO, mounting: "table" }),
    ),
  );
  say(
    planCard(
      "A small round-over in walnut, handheld",
      await ask("roundOverSmall", "trimmer", {
        woodId: "black-walnut",
        cut: TABLE_EDGE,
        mounting: "handheld",
      }),
    ),
  );
  say(
    planCard(
      "The 3-1/2 in bit in a router that cannot go slow enough",
      await ask("panelCove", "fixed", { ...cherryPanel, mounting: "table" }),
    ),
  );
}

function say(text: string): void {
  process.stdout.write(`${text}\n`);
}
