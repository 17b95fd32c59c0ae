import { describe, expect, test } from "vitest";
import { openShop, PANEL_BIT, TABLE_ROUTER } from "./shop.ts";

const RESOURCES = [
  { path: "/v1/bits", prefix: "bit", given: PANEL_BIT },
  { path: "/v1/routers", prefix: "router", given: TABLE_ROUTER },
];

describe.each(RESOURCES)("$path", ({ path, prefix, given }) => {
  test("what was created is read back as it was given", async () => {
    const { ask } = await openShop();
    const created = await ask("POST", path, { body: given });
    expect(created.status).toBe(201);
    expect(created.body).toMatchObject({ ...given, version: 1 });
    expect(created.body.id).toMatch(new RegExp(`^${prefix}_[0-9a-f]{32}$`));
    expect(created.headers["etag"]).toBe('"1"');
    const read = await ask("GET", String(created.headers["location"]));
    expect(read.body).toEqual(created.body);
  });

  test("a change replaces what is given, removes what is null and leaves the rest", async () => {
    const { ask } = await openShop();
    const { body: created } = await ask("POST", path, { body: { ...given, notes: "Upper drawer." } });
    const url = `${path}/${created.id}`;
    const changed = await ask("PATCH", url, {
      body: { name: "Renamed", notes: null },
      headers: { "If-Match": '"1"' },
    });
    expect(changed.status).toBe(200);
    expect(changed.headers["etag"]).toBe('"2"');
    const { notes: _, ...rest } = created;
    expect(changed.body).toEqual({ ...rest, name: "Renamed", version: 2, updatedAt: changed.body.updatedAt });
    expect((await ask("GET", url)).body).toEqual(changed.body);
  });

  test("what was removed is gone", async () => {
    const { ask } = await openShop();
    const { body: created } = await ask("POST", path, { body: given });
    const url = `${path}/${created.id}`;
    expect((await ask("DELETE", url, { headers: { "If-Match": '"1"' } })).status).toBe(204);
    expect((await ask("GET", url)).status).toBe(404);
    expect((await ask("DELETE", url, { headers: { "If-Match": '"1"' } })).status).toBe(404);
    expect((await ask("GET", path)).body.data).toEqual([]);
  });

  test("nothing is found under an id that was never given", async () => {
    const { ask } = await openShop();
    for (const id of ["nothing", `${prefix}_${"0".repeat(32)}`, "%2e%2e", "'; DROP TABLE bits; --"]) {
      expect((await ask("GET", `${path}/${encodeURIComponent(id)}`)).status).toBe(404);
    }
  });
});

describe("/v1/woods", () => {
  test("a wood names the source of each of its numbers", async () => {
    const { ask } = await openShop();
    const { body: cherry } = await ask("GET", "/v1/woods/black-cherry");
    // Tangential and radial change coefficients of black cherry. Source: Wood Handbook, table 13-5.
    expect(cherry.changeCoefficient.tangential).toEqual({ value: 0.00248, provenance: "looked-up" });
    expect(cherry.changeCoefficient.radial).toEqual({ value: 0.00126, provenance: "looked-up" });
    expect((await ask("GET", "/v1/woods/unobtainium")).status).toBe(404);
  });

  test("the pages together hold every wood once", async () => {
    const { ask } = await openShop();
    const ids: string[] = [];
    let url: string | undefined = "/v1/woods?limit=7";
    while (url !== undefined) {
      const { body }: { body: { data: { id: string }[]; nextCursor: string | null } } = await ask("GET", url);
      ids.push(...body.data.map(({ id }) => id));
      url = body.nextCursor === null ? undefined : `/v1/woods?limit=7&cursor=${body.nextCursor}`;
    }
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toContain("black-cherry");
    expect(ids).toContain("mdf");
  });
});
