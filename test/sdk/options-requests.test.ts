import { expect, test } from "vitest";
import { openShop } from "../contract/shop.ts";

const ORIGIN = "https://bench.example";

/** What an OPTIONS request gets over real HTTP, whatever else it says. */
async function asked(baseUrl: string, path: string, headers: Record<string, string> = {}) {
  const response = await fetch(`${baseUrl}${path}`, { method: "OPTIONS", headers });
  const body = await response.text();
  return { status: response.status, allow: response.headers.get("allow"), body, headers: response.headers };
}

test.each([
  ["without other origins", {}],
  ["with pages of other origins", { RIMWISE_CORS_ORIGINS: ORIGIN }],
])("every OPTIONS is answered in one way, %s", async (_which, settings) => {
  const shop = await openShop(settings);
  const baseUrl = await shop.app.listen({ host: "127.0.0.1", port: 0 });
  const preflight = { origin: ORIGIN, "access-control-request-method": "POST" };
  for (const headers of [{}, { origin: ORIGIN }, { origin: "https://evil.example" }, preflight]) {
    const at = await asked(baseUrl, "/v1/bits", headers);
    // RFC 9110, section 9.3.7.
    expect(at).toMatchObject({ status: 204, allow: "GET, HEAD, OPTIONS, POST", body: "" });
    expect(await asked(baseUrl, "/v1/bits/bit_1/hold", headers)).toMatchObject({ allow: "OPTIONS, POST" });
    const away = await asked(baseUrl, "/v1/nothing", headers);
    expect(away.status).toBe(404);
    expect(JSON.parse(away.body).code).toBe("not-found");
  }
  const refused = await fetch(`${baseUrl}/v1/bits`, { method: "PATCH" });
  expect([refused.status, refused.headers.get("allow")]).toEqual([405, "GET, HEAD, OPTIONS, POST"]);
});
