import { afterAll, beforeAll, beforeEach, expect } from "vitest";
import { addBit, addRouter, addSomebody, made, type Somebody } from "./crib.ts";
import { KITCHEN_ROUTER, type KitchenIds, kitchenBits, kitchenJob } from "./kitchen.ts";
import { openShop, type Shop } from "./shop.ts";

const START = new Date("2026-11-27T08:00:00.000Z");

/** What a file of tests about jobs works with. */
export type KitchenShop = {
  shop: Shop;
  /** Who makes the jobs, and another. */
  member: Somebody;
  other: Somebody;
  /** Bits and a router that no other test has. */
  ids: KitchenIds;
};

/** A shop for a file of tests, with bits and a router for each of them. */
export function kitchenShop(): KitchenShop {
  const kitchen: Partial<KitchenShop> = {};
  let kitchens = 0;
  beforeAll(async () => {
    const shop = await openShop({}, () => START, afterAll);
    const [member, other] = [await addSomebody(shop, "member"), await addSomebody(shop, "member")];
    Object.assign(kitchen, { shop, member, other });
  });
  beforeEach(async () => {
    kitchens += 1;
    const { shop } = whole(kitchen);
    const radiusMm = 3 + kitchens / 4;
    const bits = kitchenBits(radiusMm);
    const [cope, stick, panel] = [
      await addBit(shop, bits.cope),
      await addBit(shop, bits.stick),
      await addBit(shop, bits.panel),
    ];
    const router = await addRouter(shop, KITCHEN_ROUTER);
    kitchen.ids = { radiusMm, copeId: cope.id, stickId: stick.id, panelId: panel.id, routerId: router.id };
  });
  return whole(kitchen);
}

/** It is whole once the hooks have run. */
function whole(kitchen: Partial<KitchenShop>): KitchenShop {
  return kitchen as KitchenShop;
}

/** Keeps a job of the kitchen as a draft. */
export const createJob = ({ shop, member, ids }: KitchenShop, given: object = {}) =>
  made(shop, "/v1/jobs", { ...kitchenJob(ids), ...given }, member.key);

/** Does something to a job. */
export const act = (
  { shop, member }: KitchenShop,
  jobId: string,
  what: string,
  body: object = {},
  key: string = member.key,
) => shop.ask("POST", `/v1/jobs/${jobId}/${what}`, { body, key });

/** Keeps a job of the kitchen and makes it ready. */
export async function readyJob(kitchen: KitchenShop, given: object = {}) {
  const job = await createJob(kitchen, given);
  const answer = await act(kitchen, job.id, "ready");
  expect(answer.status, answer.text).toBe(200);
  return answer.body;
}

/** What a job rests on that has changed. */
export const changesOf = async ({ shop, member }: KitchenShop, jobId: string) =>
  (await shop.ask("GET", `/v1/jobs/${jobId}/changes`, { key: member.key })).body;
