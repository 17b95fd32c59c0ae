import { describe, expect, test } from "vitest";
import { behindTheService, copyRow } from "../../services/shop/testing/behind-the-service.ts";
import { addBit, addSomebody, made } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

const prove = async ({ ask }: Pick<Shop, "ask">) =>
  (await ask("POST", "/v1/events/verify", { body: {} })).body;

/** A shop in which a bit was entered and changed, somebody was made an instructor, and a key was rotated and a bit removed. */
async function furnished() {
  const shop = await openShop();
  const bit = await addBit(shop);
  await shop.ask("PATCH", `/v1/bits/${bit.id}`, { body: { massG: 330 }, headers: { "If-Match": "*" } });
  const person = await addSomebody(shop, "member");
  await made(shop, `/v1/keys/${person.keyId}/rotate`, {});
  const removed = await addBit(shop);
  const gone = await shop.ask("DELETE", `/v1/bits/${removed.id}`, { headers: { "If-Match": "*" } });
  expect(gone.status).toBeLessThan(300);
  return { shop, bit, person, removed };
}

const act = (shop: Shop, sql: string) => behindTheService(shop, ({ run }) => run(sql));

describe("the proof of the history sees the records", () => {
  test("as the last event of each left them", async () => {
    const { shop } = await furnished();
    expect(await prove(shop)).toMatchObject({ isIntact: true, nextSequence: null });
  });

  test.each([
    ["a raised maximum speed", "UPDATE bits SET marked_max_rpm = 30000", "record-changed"],
    ["a manager made of a member", "UPDATE people SET role = 'manager'", "record-changed"],
    ["a version that nothing led to", "UPDATE people SET version = 7", "record-changed"],
    [
      "another secret for a key",
      `UPDATE keys SET key_sha256 = '${"0".repeat(64)}' WHERE person_id IS NOT NULL`,
      "record-changed",
    ],
    ["a bit that is gone", "DELETE FROM bits", "record-missing"],
    ["a key that is gone", "DELETE FROM keys WHERE person_id IS NOT NULL", "record-missing"],
    [
      "a planted manager",
      `INSERT INTO people (id, version, created_at, updated_at, name, role, state)
        SELECT 'person_ffffffff', 1, created_at, updated_at, 'Nobody', 'manager', 'active' FROM people LIMIT 1`,
      "record-planted",
    ],
  ])("and %s", async (_name, sql, reason) => {
    const { shop } = await furnished();
    await act(shop, sql);
    const proof = await prove(shop);
    expect(proof).toMatchObject({ isIntact: false, nextSequence: null, broken: { reason } });
  });

  test("and one that was put back after its removal", async () => {
    const { shop, bit, removed } = await furnished();
    await behindTheService(shop, (database) => copyRow(database, "bits", bit.id, { id: `'${removed.id}'` }));
    expect(await prove(shop)).toMatchObject({ broken: { reason: "record-planted" } });
  });

  test("but not those that nothing was stated about, from before there were digests: of them the version", async () => {
    const { shop } = await furnished();
    await behindTheService(shop, ({ run, pastTriggers }) =>
      pastTriggers(() => run("UPDATE events SET record_digest = NULL")),
    );
    // The hash covers the digest: taking it away is seen at once.
    expect((await prove(shop)).broken).toMatchObject({ sequence: 1, reason: "event-changed" });
  });
});

test("the digest of a record is in its event and its hash", async () => {
  const { shop, bit } = await furnished();
  const { body } = await shop.ask("GET", `/v1/events?subjectId=${bit.id}`);
  const digests = body.data.map(({ recordDigest }: { recordDigest: string }) => recordDigest);
  expect(new Set(digests).size).toBe(2);
  for (const digest of digests) expect(digest).toMatch(/^[0-9a-f]{64}$/);
});
