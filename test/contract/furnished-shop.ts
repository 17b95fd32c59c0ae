import { afterAll, beforeAll } from "vitest";
import { made } from "./crib.ts";
import { type Furnished, furnish } from "./furnish.ts";
import { openShop, type Shop } from "./shop.ts";

/** When everything in a furnished shop happens. */
export const AT = new Date("2026-03-02T08:00:00.000Z");

const IN_A_MONTH_MS = 30 * 86_400_000;

/** A shop with something of everything, for all tests of a file, and the moment that its clock shows. */
export type FurnishedShop = { shop: Shop; furnished: Furnished; now: Date };

export function furnishedShop(): FurnishedShop {
  const here: Partial<FurnishedShop> = { now: AT };
  beforeAll(async () => {
    const shop = await openShop({}, () => here.now ?? AT, afterAll);
    const until = new Date(AT.getTime() + IN_A_MONTH_MS).toISOString();
    here.furnished = await furnish((path, body, key) => made(shop, path, body, key), until);
    here.shop = shop;
  });
  return whole(here);
}

/** It is whole once the hooks have run. */
function whole(here: Partial<FurnishedShop>): FurnishedShop {
  return here as FurnishedShop;
}
