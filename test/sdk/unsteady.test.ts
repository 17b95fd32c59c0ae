import { CallError, createClient, type Fetch } from "@rimwise/client";
import { expect, test } from "vitest";
import { PANEL_BIT } from "../contract/shop.ts";
import { openShopWithClient } from "./shop-client.ts";

const CALLS = 40;

/** A connection that fails one time in three, by turns before the service has heard and after it has answered. */
function unsteady(): Fetch {
  let sent = 0;
  return async (request) => {
    sent += 1;
    if (sent % 6 === 3) throw new TypeError("fetch failed");
    const response = await fetch(request);
    if (sent % 6 !== 0) return response;
    await response.arrayBuffer();
    throw new TypeError("fetch failed");
  };
}

test("through a connection that fails one time in three, as many records are made as calls", async () => {
  const { shop } = await openShopWithClient();
  const baseUrl = await shop.app.listen({ host: "127.0.0.1", port: 0 });
  const client = createClient({ baseUrl, key: shop.managerKey, fetch: unsteady() });
  const create = async (number: number, idempotencyKey?: string): Promise<string> => {
    const body = { ...PANEL_BIT, name: `Bit ${number}`, form: { ...PANEL_BIT.form } };
    try {
      const given = idempotencyKey === undefined ? {} : { idempotencyKey };
      return (await client.bits.create(Object(body), given)).id;
    } catch (error) {
      if (!(error instanceof CallError) || error.call?.idempotencyKey === undefined) throw error;
      return create(number, error.call.idempotencyKey);
    }
  };
  const ids = await Promise.all(Array.from({ length: CALLS }, (_, number) => create(number)));
  expect(new Set(ids).size).toBe(CALLS);
  const kept = await shop.ask("GET", "/v1/bits?limit=100");
  expect(kept.body.data.map(({ id }: { id: string }) => id).sort()).toEqual([...ids].sort());
});
