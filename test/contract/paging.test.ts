import fc from "fast-check";
import { expect, test } from "vitest";
import { openShop, PANEL_BIT } from "./shop.ts";

type Page = { data: { id: string }[]; nextCursor: string | null };

test("the pages together hold every record once, in order of creation, whatever their size", async () => {
  const { ask } = await openShop();
  const created: string[] = [];
  for (let count = 0; count < 23; count += 1) {
    created.push((await ask("POST", "/v1/bits", { body: { ...PANEL_BIT, name: `Bit ${count}` } })).body.id);
  }
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 1, max: 30 }), async (limit) => {
      const seen: string[] = [];
      let url: string | undefined = `/v1/bits?limit=${limit}`;
      while (url !== undefined) {
        const { body, headers }: { body: Page; headers: Record<string, string | undefined> } = await ask(
          "GET",
          url,
        );
        expect(body.data.length).toBeLessThanOrEqual(limit);
        seen.push(...body.data.map(({ id }) => id));
        // RFC 8288, and the cursor beside it, lead to the same page.
        url = /^<(.+)>; rel="next"$/.exec(headers["link"] ?? "")?.[1];
        expect(url === undefined).toBe(body.nextCursor === null);
        if (body.nextCursor !== null) expect(url).toContain(`cursor=${body.nextCursor}`);
      }
      expect(seen).toEqual(created);
    }),
    { numRuns: 10 },
  );
});

test("a record removed between two pages neither hides nor repeats another", async () => {
  const { ask } = await openShop();
  const ids: string[] = [];
  for (let count = 0; count < 4; count += 1) {
    ids.push((await ask("POST", "/v1/bits", { body: PANEL_BIT })).body.id);
  }
  const first = await ask("GET", "/v1/bits?limit=2");
  await ask("DELETE", `/v1/bits/${ids[1]}`, { headers: { "If-Match": "*" } });
  const second = await ask("GET", `/v1/bits?limit=2&cursor=${first.body.nextCursor}`);
  expect(second.body.data.map(({ id }: { id: string }) => id)).toEqual(ids.slice(2));
  expect(second.body.nextCursor).toBeNull();
});
