import { buildApp, grantFirstKey, openShopStore, readConfig } from "@rimwise/shop";
import { UNLIMITED } from "../running/unlimited.ts";

/** A shop in memory that its manager asks as fast as may be. A refusal ends the benchmark. */
export async function inMemoryShop() {
  const config = readConfig({ RIMWISE_DATABASE: ":memory:", ...UNLIMITED });
  const store = await openShopStore(config.database);
  const key = (await grantFirstKey(store, config.firstKey)) ?? "";
  const { app } = await buildApp({ config, store });
  return {
    ask: async (method: "GET" | "POST", url: string, payload?: object) => {
      const headers = { authorization: `Bearer ${key}` };
      const response = await app.inject({ method, url, headers, ...(payload && { payload }) });
      if (response.statusCode >= 300) throw new Error(`${url}: ${response.body}`);
      return response;
    },
    close: async () => {
      await app.close();
      await store.close();
    },
  };
}
