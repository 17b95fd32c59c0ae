import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { behindTheService, everyRowOf } from "../../services/shop/testing/behind-the-service.ts";
import { describeOnSqlite } from "../../services/shop/testing/one-engine.ts";
import { addBit, addSomebody, made, statusFor } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

const NAME = "Quillon Featherstonehaugh";
const NOTES = "Left-handed, needs the low bench.";
const reason = "They asked for it.";

let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, undefined, (release) => afterAll(release));
});

const erase = (id: string) => shop.ask("POST", `/v1/people/${id}/erase`, { body: { reason } });
const historyOf = async (id: string) =>
  (await shop.ask("GET", `/v1/events?subjectId=${id}&limit=200`)).body.data.map(
    ({ data }: { data: object }) => data,
  );

describeOnSqlite("it has one file, and nothing else is freed in it", () => {
  test("not even there is the name of somebody who was erased", async () => {
    const { id } = await made(shop, "/v1/people", { name: NAME, role: "member", notes: NOTES });
    expect((await erase(id)).status).toBe(200);
    await behindTheService(shop, ({ rows }) => rows("PRAGMA wal_checkpoint(TRUNCATE)"));
    expect(readFileSync(shop.file).includes("Quillon")).toBe(false);
  });
});

describe("a person", () => {
  test("is in the history by a salted digest, not by name, from the first event on", async () => {
    const { id } = await made(shop, "/v1/people", { name: NAME, role: "member", notes: NOTES });
    await shop.ask("PATCH", `/v1/people/${id}`, {
      body: { notes: "Tuesdays." },
      headers: { "If-Match": "*" },
    });
    const history = JSON.stringify(await historyOf(id));
    expect(history).not.toMatch(/Quillon|Left-handed|Tuesdays|salt/);
    const [created] = await historyOf(id);
    expect(created.after.privateDigest).toMatch(/^sha256:[0-9a-f]{64}$/);
    // Whoever guesses the name cannot show that it was this one.
    expect(created.after.privateDigest).not.toContain(createHash("sha256").update(NAME).digest("hex"));
    expect((await shop.ask("GET", `/v1/people/${id}`)).text).not.toContain("salt");
    const { id: other } = await made(shop, "/v1/people", { name: NAME, role: "member", notes: NOTES });
    const [alike] = await historyOf(other);
    expect(alike.after.privateDigest).not.toBe(created.after.privateDigest);
    for (const each of [id, other]) expect((await erase(each)).status).toBe(200);
  });

  test("is erased for good: no row names them, their keys end, and the proof stays whole", async () => {
    const { id } = await made(shop, "/v1/people", { name: NAME, role: "member", notes: NOTES });
    const { key } = await made(shop, "/v1/keys", { name: "Tablet", personId: id });
    const teacher = await addSomebody(shop, "instructor");
    const consent = { personId: id, kind: "parental-consent", notes: `Signed by ${NAME}'s mother.` };
    await made(shop, "/v1/qualifications", consent, teacher.key);
    const bit = await addBit(shop);
    const loan = await made(shop, "/v1/loans", { bitId: bit.id, personId: id });
    const { status, body } = await erase(id);
    expect(status).toBe(200);
    expect(body.person).toMatchObject({ id, name: "Erased person", state: "left" });
    expect(body.person.notes).toBeUndefined();
    expect(body.stays.join()).toMatch(/under the person's id.*backups.*log.*vacuumed/s);
    expect(await statusFor(shop, key)).toBe(401);
    expect(await everyRowOf(shop)).not.toMatch(/Quillon/);
    expect((await shop.ask("GET", `/v1/loans/${loan.id}`)).body.personId).toBe(id);
    expect((await shop.ask("POST", "/v1/events/verify", { body: {} })).body.isIntact).toBe(true);
    expect((await erase(id)).body.person).toEqual(body.person);
    const change = { body: { name: "Somebody" }, headers: { "If-Match": "*" } };
    expect((await shop.ask("PATCH", `/v1/people/${id}`, change)).body.code).toBe("invalid-state");
  });

  test("who is the last manager cannot be erased", async () => {
    const own = await openShop();
    const { id } = await made(own, "/v1/people", { name: NAME, role: "manager" });
    const { key } = await made(own, "/v1/keys", { name: "Own", personId: id });
    const { body } = await own.ask("GET", "/v1/keys");
    const first = body.data.find((each: { personId?: string }) => each.personId === undefined);
    expect((await own.ask("POST", `/v1/keys/${first.id}/revoke`, { key })).status).toBe(200);
    const answer = await own.ask("POST", `/v1/people/${id}/erase`, { body: { reason }, key });
    expect([answer.status, answer.body.code]).toEqual([409, "last-manager"]);
  });
});
