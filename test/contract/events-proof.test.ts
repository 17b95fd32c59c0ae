import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import { behindTheService, changeJson } from "../../services/shop/testing/behind-the-service.ts";
import type { Database, Row } from "../../services/shop/testing/database.ts";
import { describeOnSqlite } from "../../services/shop/testing/one-engine.ts";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";
import { sortedJson } from "./sorted-json.ts";

/** Seven events: the first key, the signing key, three bits, a checkpoint about the fifth, and a bit after it. */
async function shopWithHistory() {
  const shop = await openShop();
  const addBit = () =>
    shop.ask("POST", "/v1/bits", { body: PANEL_BIT, headers: { "Change-Reason": "new on the rack" } });
  for (let count = 0; count < 3; count += 1) await addBit();
  const { body: checkpoint } = await shop.ask("POST", "/v1/events/checkpoints");
  await addBit();
  return { ...shop, checkpoint };
}

/** What somebody does who can write the database, past every trigger. */
function pastEveryTrigger(shop: Pick<Shop, "file">, act: (database: Database) => Promise<void>) {
  return behindTheService(shop, (database) => database.pastTriggers(() => act(database)));
}

const AT_THREE = { key: "sequence", where: "sequence = 3" };

const prove = async ({ ask }: Shop, body: object = {}) =>
  (await ask("POST", "/v1/events/verify", { body })).body;

describe("the proof of the history", () => {
  test("of a history nobody altered finds it intact, checkpoints and all", async () => {
    const shop = await shopWithHistory();
    expect(await prove(shop)).toEqual({
      isIntact: true,
      checked: 7,
      firstSequence: 1,
      lastSequence: 7,
      nextSequence: null,
      checkpoints: 1,
    });
    expect(await prove(shop, { fromSequence: 7 })).toMatchObject({
      isIntact: true,
      checked: 1,
      checkpoints: 0,
    });
    expect(await prove(shop, { fromSequence: 8 })).toMatchObject({ isIntact: true, checked: 0 });
    const bare = await shop.ask("POST", "/v1/events/verify");
    expect(bare.body).toMatchObject({ isIntact: true, checked: 7 });
  });

  test.each([
    ["who did it", "UPDATE events SET by = 'somebody' WHERE sequence = 3", 3, "event-changed"],
    ["when", "UPDATE events SET at = '2020-01-01T00:00:00.000Z' WHERE sequence = 3", 3, "event-changed"],
    ["why", "UPDATE events SET why = 'no reason' WHERE sequence = 3", 3, "event-changed"],
    ["that there was a reason", "UPDATE events SET why = NULL WHERE sequence = 3", 3, "event-changed"],
    ["its own hash", `UPDATE events SET hash = '${"f".repeat(64)}' WHERE sequence = 3`, 3, "event-changed"],
    ["where its time is found", "UPDATE events SET latest_at = '2999' WHERE sequence = 3", 3, "time-changed"],
    ["by a row less", "DELETE FROM events WHERE sequence = 3", 3, "event-missing"],
    ["by its first row less", "DELETE FROM events WHERE sequence = 1", 1, "event-missing"],
    [
      "by all after a checkpoint's event, and its own",
      "DELETE FROM events WHERE sequence >= 5",
      5,
      "event-missing",
    ],
    ["by a checkpoint less", "DELETE FROM checkpoints", 6, "checkpoint-missing"],
    [
      "in what a checkpoint says",
      "UPDATE checkpoints SET created_at = '2020-01-01T00:00:00.000Z'",
      5,
      "checkpoint-changed",
    ],
    ["in a checkpoint's place", "UPDATE checkpoints SET sequence = 3", 3, "checkpoint-changed"],
    [
      "in a checkpoint's signature",
      "UPDATE checkpoints SET statement = substr(statement, 1, length(statement) - 8) || 'AAAAAAAA'",
      5,
      "checkpoint-not-signed",
    ],
    ["to a checkpoint that is none", "UPDATE checkpoints SET statement = 'x'", 5, "checkpoint-not-signed"],
  ])("names a history that was changed in %s", async (_what, sql, sequence, reason) => {
    const shop = await shopWithHistory();
    await pastEveryTrigger(shop, ({ run }) => run(sql));
    await expectBroken(shop, sequence, reason);
  });

  test("names a history that was changed in what happened", async () => {
    const shop = await shopWithHistory();
    const change = (data: { after: { massG: number } }) => {
      data.after.massG = 1;
    };
    await pastEveryTrigger(shop, (database) => changeJson(database, ["events", "data"], change, AT_THREE));
    await expectBroken(shop, 3, "event-changed");
  });

  describeOnSqlite("PostgreSQL keeps no JSON that is none", () => {
    test("names a history that was changed in what happened, to no JSON", async () => {
      const shop = await shopWithHistory();
      await pastEveryTrigger(shop, ({ run }) =>
        run("PRAGMA ignore_check_constraints = ON; UPDATE events SET data = '{' WHERE sequence = 3"),
      );
      await expectBroken(shop, 3, "event-changed");
    });
  });

  test("names the next event if a changed one was given a new hash", async () => {
    const shop = await shopWithHistory();
    await pastEveryTrigger(shop, (database) => rewrite(database, 3, 3));
    expect(await prove(shop)).toMatchObject({
      isIntact: false,
      broken: { sequence: 4, reason: "chain-broken" },
    });
  });

  test("exposes a history that was rewritten, every hash right, by the checkpoint alone", async () => {
    const shop = await shopWithHistory();
    await pastEveryTrigger(shop, async (database) => {
      await rewrite(database, 3, 7);
      await database.run("UPDATE checkpoints SET hash = (SELECT hash FROM events WHERE sequence = 5)");
    });
    expect(await prove(shop)).toMatchObject({
      isIntact: false,
      broken: { sequence: 5, reason: "checkpoint-changed" },
    });
    await pastEveryTrigger(shop, ({ run }) =>
      run("UPDATE checkpoints SET hash = $1", [shop.checkpoint.hash]),
    );
    expect(await prove(shop)).toMatchObject({
      isIntact: false,
      broken: { sequence: 5, reason: "checkpoint-differs" },
    });
    await pastEveryTrigger(shop, async (database) => {
      await database.run(
        "UPDATE events SET type = 'bit.created', data = '{\"after\":{}}' WHERE sequence = 6; DELETE FROM checkpoints",
      );
      await rewrite(database, 6, 7);
    });
    expect(await prove(shop), "without the checkpoint only what its event made shows it").toMatchObject({
      broken: { sequence: 6, reason: "record-missing" },
    });
  });

  test("does not vouch for what was signed with keys that are gone", async () => {
    const first = await shopWithHistory();
    const other = await openShop();
    const [row] = await behindTheService(first, ({ rows }) => rows("SELECT * FROM checkpoints"));
    const planted = Object.entries({ ...row, sequence: 1 });
    const places = planted.map((_, index) => `$${index + 1}`);
    await behindTheService(other, ({ run }) =>
      run(
        `INSERT INTO checkpoints (${planted.map(([name]) => name)}) VALUES (${places})`,
        planted.map(([, value]) => value),
      ),
    );
    expect(await prove(other)).toMatchObject({ broken: { sequence: 1, reason: "checkpoint-key-unknown" } });
  });

  test("begins where it is asked to, and says so if that is no event", async () => {
    const shop = await shopWithHistory();
    await pastEveryTrigger(shop, ({ run }) => run("DELETE FROM events WHERE sequence = 3"));
    expect(await prove(shop, { fromSequence: 5 })).toMatchObject({
      ...{ checked: 3, lastSequence: 7 },
      // The events are whole from there on, but one of the bits has none left.
      broken: { reason: "record-planted" },
    });
    expect(await prove(shop, { fromSequence: 4 })).toMatchObject({
      broken: { sequence: 3, reason: "event-missing" },
    });
    for (const body of [{ fromSequence: 0 }, { fromSequence: "1" }, { from: 1 }]) {
      expect((await shop.ask("POST", "/v1/events/verify", { body })).status).toBe(422);
    }
  });
});

async function expectBroken(shop: Shop, sequence: number, reason: string): Promise<void> {
  const proof = await prove(shop);
  expect(proof).toMatchObject({ isIntact: false, broken: { sequence, reason }, nextSequence: null });
  expect(proof.lastSequence).toBe(sequence - 1);
}

/** Changes who did an event, and makes the hashes from it up to another one right again, as the published recipe says. */
async function rewrite({ run, rows }: Database, changed: number, last: number): Promise<void> {
  const event = async (sequence: number) => {
    const [row] = await rows("SELECT * FROM events WHERE sequence = $1", [sequence]);
    if (row === undefined) throw new Error(`there is no event ${sequence}`);
    return row;
  };
  await run("UPDATE events SET by = 'somebody' WHERE sequence = $1", [changed]);
  for (let sequence = changed; sequence <= last; sequence += 1) {
    const before = await event(sequence - 1);
    await run("UPDATE events SET previous_hash = $1 WHERE sequence = $2", [before["hash"], sequence]);
    const hash = hashOf(await event(sequence));
    await run("UPDATE events SET hash = $1 WHERE sequence = $2", [hash, sequence]);
  }
}

function hashOf(row: Row): string {
  const content = {
    sequence: row["sequence"],
    at: row["at"],
    by: row["by"],
    requestId: row["request_id"],
    type: row["type"],
    subjectId: row["subject_id"],
    subjectVersion: row["subject_version"],
    data: JSON.parse(String(row["data"])),
    previousHash: row["previous_hash"],
    ...(row["why"] === null ? {} : { why: row["why"] }),
    ...(row["record_digest"] === null ? {} : { recordDigest: row["record_digest"] }),
  };
  return createHash("sha256").update(sortedJson(content)).digest("hex");
}
