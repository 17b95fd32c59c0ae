import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, onTestFinished, test, vi } from "vitest";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { addBit } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

const prove = async ({ ask }: Pick<Shop, "ask">) =>
  (await ask("POST", "/v1/events/verify", { body: {} })).body;
const kept = ({ signingKeys }: Shop) => `${signingKeys}.checkpoint`;
const checkpoint = async ({ ask }: Shop) => (await ask("POST", "/v1/events/checkpoints")).body;

/** Cuts the history after an event, with every record and checkpoint that came after it: what is left fits together. */
function cutAfter(shop: Shop, sequence: number): Promise<void> {
  return behindTheService(shop, async ({ run, pastTriggers }) => {
    for (const table of ["bits", "checkpoints"]) {
      await run(
        `DELETE FROM ${table} WHERE id IN (SELECT subject_id FROM events WHERE sequence > ${sequence})`,
      );
    }
    await pastTriggers(() => run(`DELETE FROM events WHERE sequence > ${sequence}`));
  });
}

test("the newest checkpoint is kept beside the signing keys, and shows that the end of the history was cut off", async () => {
  const shop = await openShop();
  await addBit(shop);
  const { statement } = await checkpoint(shop);
  await vi.waitFor(() => expect(readFileSync(kept(shop), "utf8").trim()).toBe(statement));
  await addBit(shop);
  const later = await checkpoint(shop);
  await vi.waitFor(() => expect(readFileSync(kept(shop), "utf8").trim()).toBe(later.statement));
  expect((await prove(shop)).isIntact).toBe(true);
  await cutAfter(shop, 2);
  expect((await prove(shop)).broken).toEqual({ sequence: 3, reason: "event-missing" });
  // What comes after the cut does not write over the proof of it.
  for (let count = 0; count < 4; count += 1) await addBit(shop);
  await checkpoint(shop);
  await addBit(shop);
  await vi.waitFor(() => expect(shop.log()).toContain("does not hold the checkpoint that is kept"));
  expect(readFileSync(kept(shop), "utf8").trim()).toBe(later.statement);
  expect((await prove(shop)).broken).toEqual({ sequence: later.sequence, reason: "head-differs" });
});

test("a kept checkpoint that nobody here signed is not believed", async () => {
  const shop = await openShop();
  await addBit(shop);
  writeFileSync(kept(shop), "x.y.z\n");
  expect((await prove(shop)).broken).toMatchObject({ reason: "checkpoint-not-signed" });
});

test("every checkpoint is sent to the file that a setting names", async () => {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-elsewhere-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const file = join(folder, "checkpoints.txt");
  const shop = await openShop({ RIMWISE_CHECKPOINTS_SENT_TO: file });
  const made: string[] = [];
  const sent = () => readFileSync(file, "utf8").trim().split("\n");
  // One by itself, then several before anybody has looked.
  for (const count of [1, 3]) {
    for (let one = 0; one < count; one += 1) {
      await addBit(shop);
      made.push((await checkpoint(shop)).statement);
    }
    await vi.waitFor(() => expect(sent()).toEqual(made));
  }
});
