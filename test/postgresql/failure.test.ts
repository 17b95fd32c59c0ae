import { afterAll, beforeAll, expect, onTestFinished, test } from "vitest";
import { behindTheService, count } from "../../services/shop/testing/behind-the-service.ts";
import { freeSchema, newSchema, serverUnderTest } from "../../services/shop/testing/database-under-test.ts";
import { describeOnPostgresql } from "../../services/shop/testing/one-engine.ts";
import { manyStraights, sendFile } from "../contract/import-files.ts";
import { type Answer, openShop, PANEL_BIT, type Shop } from "../contract/shop.ts";
import { follow } from "../crash/followers.ts";
import { openProxy } from "./proxy.ts";
import { type Server, startServer } from "./server.ts";

/** So little is waited for a server that is not there, and for an answer that does not come. */
const IMPATIENT = "pool_size=4&connect_timeout=1&answer_timeout=2";
const COMMIT = "COMMIT\0";

/** A shop whose database is behind a proxy. */
async function shopBehindProxy(server: string, folder: string) {
  const database = newSchema(server, IMPATIENT);
  // A server of this file's own goes as a whole.
  if (server === serverUnderTest()) onTestFinished(() => freeSchema(database));
  const proxy = await openProxy(folder);
  const shop = await openShop({ RIMWISE_DATABASE: proxy.through(database) });
  return { shop, proxy, direct: { file: database } };
}

const add = ({ ask }: Shop, key: string) =>
  ask("POST", "/v1/bits", { body: PANEL_BIT, headers: { "Idempotency-Key": key } });
const readiness = ({ ask }: Shop) => ask("GET", "/readyz", { key: null });

function expectAway({ status, headers, body }: Answer, code = "database-away") {
  expect([status, body.code]).toEqual([503, code]);
  expect(headers["content-type"]).toMatch(/^application\/problem\+json/);
  expect(Number(headers["retry-after"])).toBeGreaterThan(0);
}

const waitFor = (shop: Shop, status: number) =>
  expect.poll(async () => (await readiness(shop)).status, { timeout: 20_000, interval: 200 }).toBe(status);

describeOnPostgresql("a network that fails between the service and PostgreSQL", (server) => {
  const folder = decodeURIComponent(
    new URL(server || "postgresql://x/x?host=").searchParams.get("host") ?? "",
  );

  test("while nothing is asked costs nobody an answer", async () => {
    const { shop, proxy } = await shopBehindProxy(server, folder);
    for (let count = 0; count < 4; count += 1) {
      expect((await add(shop, `idle-${count}`)).status).toBe(201);
      proxy.cut();
      await new Promise((resolve) => setTimeout(resolve, 50));
      expect((await shop.ask("GET", "/v1/bits")).body.data).toHaveLength(count + 1);
    }
  });

  test("amid a transaction leaves nothing of it, and says that nothing was changed", async () => {
    const { shop, proxy, direct } = await shopBehindProxy(server, folder);
    proxy.cutAt("INSERT INTO bits", "before");
    const lost = await add(shop, "amid");
    expectAway(lost);
    expect(lost.body.detail).toMatch(/^Nothing was changed\. Send it again/);
    expect(await count(direct, "bits")).toBe(0);
    expect((await add(shop, "amid")).status).toBe(201);
    expect(await count(direct, "bits")).toBe(1);
  });

  test("amid an import row by row leaves what was taken of it, and says so", async () => {
    const { shop, proxy, direct } = await shopBehindProxy(server, folder);
    const file = manyStraights(150);
    proxy.cutAt("Straight 120", "before");
    const lost = await sendFile(shop, file, { query: "?mode=row-by-row" });
    expectAway(lost);
    expect(lost.body.detail).toMatch(/^The import import_\S+ was cut off\. The rows .+ are kept/);
    expect(await count(direct, "bits")).toBe(100);
    const again = await sendFile(shop, file, { query: "?mode=row-by-row" });
    expect([again.status, again.body.code]).toEqual([409, "imported-before"]);
    proxy.cutAt("Straight 20", "before");
    const whole = await sendFile(shop, manyStraights(151));
    expectAway(whole);
    expect(whole.body.detail).toMatch(/^Nothing was changed\. Send it again/);
    expect(await count(direct, "bits")).toBe(100);
  });

  test("at a COMMIT that the server never got is no write: the same request again is the first", async () => {
    const { shop, proxy, direct } = await shopBehindProxy(server, folder);
    proxy.cutAt(COMMIT, "before");
    expectAway(await add(shop, "lost"));
    expect(await count(direct, "bits")).toBe(0);
    const again = await add(shop, "lost");
    expect([again.status, again.headers["idempotent-replayed"]]).toEqual([201, undefined]);
    expect(await count(direct, "events WHERE type = 'bit.created'")).toBe(1);
  });

  test("at a COMMIT that the server has done is found out by the chain, and acknowledged once", async () => {
    const { shop, proxy, direct } = await shopBehindProxy(server, folder);
    for (let round = 1; round <= 3; round += 1) {
      proxy.cutAt(COMMIT, "after");
      const several = await Promise.all(["a", "b", "c"].map((key) => add(shop, `${key}-${round}`)));
      expect(several.map(({ status }) => status)).toEqual([201, 201, 201]);
      expect(await count(direct, "bits")).toBe(3 * round);
      expect(await count(direct, "events WHERE type = 'bit.created'")).toBe(3 * round);
    }
    expect((await shop.ask("POST", "/v1/events/verify", { body: {} })).body.isIntact).toBe(true);
  });

  test("at the COMMIT of a refusal that is kept is found out too", async () => {
    const { shop, proxy } = await shopBehindProxy(server, folder);
    const authorization = `Bearer ${shop.managerKey}`;
    const headers = { authorization, "idempotency-key": "nothing-there", "if-match": '"1"' };
    const ask = () =>
      shop.app.inject({ method: "PATCH", url: "/v1/bits/bit_0", payload: { wings: 3 }, headers });
    proxy.cutAt(COMMIT, "after");
    expect((await ask()).statusCode).toBe(404);
    const again = await ask();
    expect([again.statusCode, again.headers["idempotent-replayed"]]).toEqual([404, "true"]);
  });

  test("at a COMMIT and stays away is no answer at all: it says that nobody knows, and the same request again tells", async () => {
    const { shop, proxy, direct } = await shopBehindProxy(server, folder);
    proxy.cutAt(COMMIT, "after", () => proxy.refuse(true));
    const unknown = await add(shop, "unknown");
    expectAway(unknown, "outcome-unknown");
    expect(unknown.body.detail).toContain("same Idempotency-Key");
    expect((await readiness(shop)).status).toBe(503);
    proxy.refuse(false);
    await waitFor(shop, 200);
    const told = await add(shop, "unknown");
    expect([told.status, told.headers["idempotent-replayed"]]).toEqual([201, "true"]);
    expect(await count(direct, "bits")).toBe(1);
  });

  test("by saying nothing any more is given up, and gone on with when it speaks again", async () => {
    const { shop, proxy, direct } = await shopBehindProxy(server, folder);
    expect((await add(shop, "before")).status).toBe(201);
    proxy.stall(true);
    const [read, written, ready] = await Promise.all([
      shop.ask("GET", "/v1/bits"),
      add(shop, "stalled"),
      readiness(shop),
    ]);
    expect([read.status, written.status]).toEqual([503, 503]);
    expect(ready.status).toBe(503);
    expect(ready.body.reason).toBe("The database does not answer. It is asked again until it does.");
    proxy.stall(false);
    proxy.cut();
    await waitFor(shop, 200);
    expect((await add(shop, "stalled")).status).toBe(201);
    expect(await count(direct, "bits")).toBe(2);
  });

  test("is heard by nobody who follows: the events come once and in order, those of another process too", async () => {
    const { shop, proxy, direct } = await shopBehindProxy(server, folder);
    const other = await openShop({
      RIMWISE_DATABASE: direct.file,
      RIMWISE_SIGNING_KEYS: shop.signingKeys,
      RIMWISE_FIRST_KEY: shop.managerKey,
    });
    const address = await shop.app.listen({ port: 0, host: "127.0.0.1" });
    const { heard, leave } = follow(() => address, shop.managerKey);
    onTestFinished(leave);
    await add(other, "one");
    await expect.poll(heard).toEqual([1, 2, 3]);
    proxy.cut();
    await add(other, "two");
    await expect.poll(heard, { timeout: 10_000 }).toEqual([1, 2, 3, 4]);
  });
});

describeOnPostgresql("a PostgreSQL server that fails", () => {
  let primary: Server;
  beforeAll(() => {
    primary = startServer();
  });
  afterAll(() => primary.stop());

  test("is waited for: 503 while it is away, and everything acknowledged is there when it is back", async () => {
    const { shop, direct } = await shopBehindProxy(primary.url, primary.folder);
    for (let count = 0; count < 5; count += 1) expect((await add(shop, `${count}`)).status).toBe(201);
    const writing = Promise.all(["x", "y", "z"].map((key) => add(shop, key)));
    primary.crash();
    const answers = await writing;
    expectAway(await shop.ask("GET", "/v1/bits"));
    expectAway(await add(shop, "away"));
    const ready = await readiness(shop);
    expect([ready.status, ready.body.checks.database]).toEqual([503, false]);
    expect((await shop.ask("GET", "/livez", { key: null })).status).toBe(200);
    primary.start();
    await waitFor(shop, 200);
    const acknowledged = 5 + answers.filter(({ status }) => status === 201).length;
    for (const key of ["x", "y", "z"]) expect((await add(shop, key)).status).toBe(201);
    expect(await count(direct, "bits")).toBe(8);
    expect(acknowledged).toBeLessThanOrEqual(8);
    expect((await shop.ask("POST", "/v1/events/verify", { body: {} })).body.isIntact).toBe(true);
  });

  test("gives way to its standby, which has everything that was acknowledged", async () => {
    const { shop, proxy, direct } = await shopBehindProxy(primary.url, primary.folder);
    const standby = primary.addStandby();
    onTestFinished(() => standby.stop());
    for (let count = 0; count < 5; count += 1) expect((await add(shop, `${count}`)).status).toBe(201);
    primary.crash();
    expectAway(await add(shop, "between"));
    proxy.leadTo(standby.folder);
    await expect
      .poll(async () => (await readiness(shop)).body.checks)
      .toMatchObject({ database: true, writable: false });
    const refused = await add(shop, "between");
    expect([refused.status, refused.body.code]).toEqual([503, "database-read-only"]);
    standby.promote();
    await waitFor(shop, 200);
    expect((await add(shop, "between")).status).toBe(201);
    const promoted = direct.file.replace(
      encodeURIComponent(primary.folder),
      encodeURIComponent(standby.folder),
    );
    const [row] = await behindTheService({ file: promoted }, ({ rows }) =>
      rows("SELECT count(*) AS count FROM bits"),
    );
    expect(Number(row?.["count"])).toBe(6);
    expect((await shop.ask("POST", "/v1/events/verify", { body: {} })).body.isIntact).toBe(true);
  });
});
