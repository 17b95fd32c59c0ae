import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type App, buildApp, grantFirstKey, openShopStore, readConfig } from "@rimwise/shop";
import { behindTheService, copyRow, numbersTo } from "../../services/shop/testing/behind-the-service.ts";
import { UNLIMITED } from "../running/unlimited.ts";

const LAPSING = 1000;
const RUNS = 5;
const FEW = 10;
const MANY = 100_000;
const ASKED = 2000;
const WARM_UP = 300;

/**
 * How long one change takes that ends 1,000 settings at once, made from one plan and each from its own, beside the same
 * change with none; and a check with 10 and with 100,000 settings issued, asked in turns in one run.
 */
export async function benchApprovals(): Promise<string> {
  const lapses: string[] = [];
  for (const plans of ["one plan", "1,000 plans"]) {
    const none = await lapseMs(0, plans === "one plan");
    const all = await lapseMs(LAPSING, plans === "one plan");
    lapses.push(
      `  ${`${LAPSING} settings from ${plans}`.padEnd(32)} ${all.toFixed(0).padStart(5)} ms   none ${none.toFixed(1)} ms`,
    );
  }
  const { few, many } = await checkMedians();
  return [
    "One sharpening that ends every setting of its bit, in one transaction (whole request)",
    ...lapses,
    `One check (whole request, median): ${few.toFixed(0)} µs with ${FEW} settings issued, ${many.toFixed(0)} µs with ${MANY}: ratio ${(many / few).toFixed(2)}`,
  ].join("\n");
}

/** The middle of several runs in one service: a shop's service has run for a while before a bit with many settings is sharpened. */
export async function lapseMs(count: number, isOnePlan: boolean, database?: string): Promise<number> {
  const shop = await openShop(database);
  try {
    const times: number[] = [];
    for (let run = 0; run < RUNS; run += 1) {
      const { bitId, approvalId } = await issueOne(shop);
      await copies(shop.file, approvalId, count, isOnePlan ? "" : "planId", "");
      const started = performance.now();
      await shop.ask("POST", `/v1/bits/${bitId}/sharpenings`, { diameterMm: 88.2 });
      times.push(performance.now() - started);
      const { data } = await shop.ask("GET", `/v1/approvals?bitId=${bitId}&state=issued`);
      if (data.length > 0) throw new Error("a setting was left in force");
    }
    return times.sort((a, b) => a - b)[Math.floor(RUNS / 2)] ?? Number.NaN;
  } finally {
    await shop.close();
  }
}

async function checkMedians(): Promise<{ few: number; many: number }> {
  const shops = await Promise.all(
    [FEW, MANY].map(async (count) => {
      const shop = await openShop();
      const { asked, approvalId } = await issueOne(shop);
      // The others are of the same course, for other bits and routers: what a large school has.
      await copies(shop.file, approvalId, count - 1, "planId", "bitId");
      return { shop, asked, times: [] as number[] };
    }),
  );
  for (let turn = 0; turn < ASKED + WARM_UP; turn += 1) {
    for (const { shop, asked, times } of shops) {
      const started = performance.now();
      const { isAllowed } = await shop.ask("POST", "/v1/checks", asked);
      if (turn >= WARM_UP) times.push((performance.now() - started) * 1000);
      if (!isAllowed) throw new Error("the check was refused");
    }
  }
  const [few = 0, many = 0] = shops.map(({ times }) => times.sort((a, b) => a - b)[ASKED / 2] ?? 0);
  await Promise.all(shops.map(({ shop }) => shop.close()));
  return { few, many };
}

type Shop = Awaited<ReturnType<typeof openShop>>;

async function openShop(database?: string) {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-bench-"));
  const file = database ?? join(folder, "shop.sqlite");
  const config = readConfig({
    RIMWISE_DATABASE: file,
    RIMWISE_SIGNING_KEYS: join(folder, "signing-keys.json"),
    ...UNLIMITED,
  });
  const store = await openShopStore(file);
  const key = (await grantFirstKey(store, undefined)) ?? "";
  const { app } = await buildApp({ config, store });
  await app.ready();
  return {
    file,
    ask: (method: "GET" | "POST", url: string, body?: object, other = key) =>
      ask(app, other, method, url, body),
    close: async () => {
      await app.close();
      await store.close();
      rmSync(folder, { recursive: true });
    },
  };
}

async function ask(app: App, key: string, method: "GET" | "POST", url: string, body?: object) {
  const headers = { authorization: `Bearer ${key}` };
  const answer = await app.inject({ method, url, headers, ...(body && { payload: body }) });
  if (answer.statusCode >= 300) throw new Error(`${url}: ${answer.body}`);
  return answer.json();
}

/** A course with a student who may run one setting. */
async function issueOne({ ask }: Shop) {
  const bit = await ask("POST", "/v1/bits", {
    name: "Raised panel",
    form: { kind: "panel-raising", diameterMm: 88.9, pilotDiameterMm: 22, profileHeightMm: 12, face: "cove" },
    shankDiameterMm: 12.7,
    wings: 2,
    massG: 340,
  });
  const router = await ask("POST", "/v1/routers", {
    name: "Table router",
    minRpm: 10000,
    maxRpm: 22000,
    dial: { marks: { first: 1, last: 6 }, steps: 2 },
  });
  const course = await ask("POST", "/v1/courses", {
    name: "First year",
    policy: {},
    requirements: {},
    isTwoPerson: false,
  });
  const student = await ask("POST", "/v1/people", { name: "Bench 3", role: "member" });
  await ask("POST", `/v1/courses/${course.id}/enrolments`, { personId: student.id, part: "student" });
  const plan = await ask("POST", "/v1/plans", {
    bit: { id: bit.id },
    router: { id: router.id },
    mounting: "table",
    woodId: "black-cherry",
    cut: {
      kind: "panel",
      thicknessMm: 19,
      edges: [
        { lengthMm: 310, grain: "end" },
        { lengthMm: 460, grain: "long" },
      ],
    },
  });
  const draft = await ask("POST", "/v1/approvals", {
    name: "Door panels",
    courseId: course.id,
    planId: plan.id,
    supervision: "beside",
    validUntil: new Date(Date.now() + 30 * 24 * 3600 * 1000).toISOString(),
  });
  const head = await ask("POST", "/v1/people", { name: "Head of the shop", role: "manager" });
  const { key } = await ask("POST", "/v1/keys", { name: "Own", personId: head.id });
  const { setting } = await ask("POST", `/v1/approvals/${draft.id}/issue`, undefined, key);
  const asked = { personId: student.id, bitId: bit.id, routerId: router.id, mark: setting.mark };
  return { bitId: bit.id, approvalId: draft.id, asked };
}

/** Settings like this one, straight into the database; `planId` and `bitId` give each copy its own. */
async function copies(
  file: string,
  approvalId: string,
  count: number,
  planId: "" | "planId",
  bitId: "" | "bitId",
): Promise<void> {
  if (count <= 0) return;
  const id = `'${approvalId}_' || (10000000 + n)`;
  await behindTheService({ file }, async (database) => {
    const other = {
      id,
      ...(planId && { plan_id: "original.plan_id || n" }),
      ...(bitId && { bit_id: "original.bit_id || n" }),
    };
    // Each gets a place of its own in the status list.
    const numbered = { from: numbersTo(count), without: ["status_index"] };
    await copyRow(database, "approvals", approvalId, other, numbered);
    if (bitId) return;
    const [grounds] = await database.rows(
      `SELECT id FROM approval_grounds WHERE approval_id = '${approvalId}'`,
    );
    const ofCopy = { id: "original.id || '_' || n", approval_id: id };
    await copyRow(database, "approval_grounds", String(grounds?.["id"]), ofCopy, { from: numbersTo(count) });
  });
}
