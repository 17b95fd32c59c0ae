import { KITCHEN_ROUTER, kitchenBits, kitchenJob } from "../contract/kitchen.ts";
import { inMemoryShop } from "./in-memory-shop.ts";
import { ROUNDS, waits } from "./waits.ts";

/** The most parts that one request may have, three cuts in each. */
const MOST_PARTS = 200;

type Answer = { readonly id: string };

/** A kitchen of 24 doors, and a cut list as long as one may be, each from one request: time, and the longest that others wait. */
export async function benchJobs(): Promise<string> {
  const { ask, close } = await inMemoryShop();
  const post = async (url: string, payload: object) => (await ask("POST", url, payload)).json<Answer>();
  const bits = kitchenBits();
  const [cope, stick, panel] = [
    await post("/v1/bits", bits.cope),
    await post("/v1/bits", bits.stick),
    await post("/v1/bits", bits.panel),
  ];
  const router = await post("/v1/routers", KITCHEN_ROUTER);
  const ids = { radiusMm: 6, copeId: cope.id, stickId: stick.id, panelId: panel.id, routerId: router.id };
  const kitchen = kitchenJob(ids);
  const parts = Array.from({ length: MOST_PARTS }, (_, index) => {
    const part = kitchen.parts[index % kitchen.parts.length];
    return { ...part, name: `Part ${index + 1}`, lengthMm: 300 + index };
  });
  const rows = [
    await waits("24 doors", () => post("/v1/jobs/preview", kitchen)),
    await waits(`${MOST_PARTS} different parts`, () => post("/v1/jobs/preview", { ...kitchen, parts })),
  ];
  await close();
  return [`Jobs, of ${ROUNDS} requests each`, ...rows].join("\n");
}
