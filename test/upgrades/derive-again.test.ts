import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ENGINE_VERSION } from "@rimwise/domain";
import { describe, expect, onTestFinished, test } from "vitest";
import { behindTheService, changeJson, copyOf } from "../../services/shop/testing/behind-the-service.ts";
import type { Database } from "../../services/shop/testing/database.ts";
import { issued, openCourse, openSchool, school } from "../contract/school.ts";
import { openShop } from "../contract/shop.ts";

openSchool();

/** The school's database as an older program would have left it, opened by this one. */
async function reopened(age: (database: Database) => Promise<void>) {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-older-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const file = await copyOf(school.shop, folder);
  await behindTheService({ file }, age);
  return openShop(
    {
      RIMWISE_DATABASE: file,
      RIMWISE_FIRST_KEY: school.shop.managerKey,
      RIMWISE_SIGNING_KEYS: ":memory:",
    },
    () => new Date(school.nowMs),
  );
}

describe("a database that an older version of the computation left", () => {
  const OLDER = `
    UPDATE derivations SET version = '0.9.0' WHERE name = 'engine';
    UPDATE approvals SET engine_version = '0.9.0', result_digest = 'sha256:older';`;

  test("keeps in force what would be the same, under the new version", async () => {
    const approval = await issued(await openCourse());
    const { ask } = await reopened(({ run }) => run(OLDER));
    const { body } = await ask("GET", `/v1/approvals/${approval.id}`);
    expect(body).toMatchObject({
      state: "issued",
      engineVersion: ENGINE_VERSION,
      resultDigest: approval.resultDigest,
      version: approval.version + 1,
    });
    const headers = { "If-Match": "*" };
    const { status } = await ask("PATCH", `/v1/bits/${school.bitId}`, {
      body: { notes: "Rehung." },
      headers,
    });
    expect(status).toBe(200);
    expect((await ask("GET", `/v1/approvals/${approval.id}`)).body.state).toBe("issued");
    const { body: proof } = await ask("POST", "/v1/events/verify", { body: {} });
    expect(proof.isIntact).toBe(true);
  });

  test("ends what would be another plan now, and says in plain words why", async () => {
    const approval = await issued(await openCourse());
    const { ask } = await reopened(async (database) => {
      await database.run(OLDER);
      const lower = (results: { plan: { speed: { ceilingRpm: number } } }[]) => {
        for (const { plan } of results.slice(0, 1)) plan.speed.ceilingRpm = 1;
      };
      const where = `approval_id = '${approval.id}'`;
      await changeJson(database, ["approval_grounds", "results"], lower, { where });
    });
    const { body } = await ask("GET", `/v1/approvals/${approval.id}`);
    expect(body.state).toBe("lapsed");
    expect(body.lapse).toMatchObject({
      reason: "The computation was renewed. The plan would be different now.",
      cause: {
        event: "computation.renewed",
        before: { engineVersion: "0.9.0" },
        after: { engineVersion: ENGINE_VERSION },
      },
    });
  });

  test("is judged once: the next start changes nothing", async () => {
    const approval = await issued(await openCourse());
    const { ask } = await reopened(({ run }) =>
      run("UPDATE approvals SET engine_version = '0.9.0', result_digest = 'sha256:older'"),
    );
    const { body } = await ask("GET", `/v1/approvals/${approval.id}`);
    expect(body).toMatchObject({ version: approval.version, engineVersion: "0.9.0" });
  });
});

describe("a database whose bits an older version has indexed", () => {
  const STALE =
    "UPDATE bits SET words = 'nothing', facets = 'nothing', ceiling_rpm = 1, inspection_due_at = NULL;";
  const found = async (ask: Awaited<ReturnType<typeof reopened>>["ask"]) =>
    (await ask("GET", "/v1/bits?q=panel&clearance=table-only&limit=200")).body.data.map(
      ({ id }: { id: string }) => id,
    );

  test("is found by today's words, facets and limits, and its bits are due again", async () => {
    const { ask } = await reopened(({ run }) =>
      run(`${STALE} UPDATE derivations SET version = '0' WHERE name = 'index'`),
    );
    expect(await found(ask)).toContain(school.bitId);
    const { body } = await ask("GET", `/v1/bits/${school.bitId}`);
    expect(body.inspectionDueAt).toBeDefined();
    const { body: events } = await ask("GET", `/v1/events?subjectId=${school.bitId}&limit=200`);
    expect(events.data.map(({ type }: { type: string }) => type)).toContain("bit.rescheduled");
  });

  test("is left as it is when the versions agree", async () => {
    const { ask } = await reopened(({ run }) => run(STALE));
    expect(await found(ask)).not.toContain(school.bitId);
  });

  test("from before there were versions is indexed again too", async () => {
    const { ask } = await reopened(({ run }) => run(`${STALE} DELETE FROM derivations`));
    expect(await found(ask)).toContain(school.bitId);
  });
});
