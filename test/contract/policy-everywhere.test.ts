import {
  bitCeilings,
  clearanceOf,
  dialSpeeds,
  edgeLife,
  hasColletFor,
  type Policy,
  type PolicyLayer,
  RULE_NAMES,
  RULES,
  sharpeningsLeft,
  strictestPolicy,
  trialOutcome,
  woodById,
} from "@rimwise/domain";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { made } from "./crib.ts";
import {
  ASKED,
  ENTERED,
  furnished,
  jobRequest,
  panelRequest,
  planRequests,
  toothOf,
  type World,
} from "./policy-world.ts";
import { openShop } from "./shop.ts";

let now = new Date(ENTERED);
/** Two shops alike: one tightens its policy, in the other a request does. */
let tightened: World;
let plain: World;

beforeAll(async () => {
  tightened = await furnished(await openShop({}, () => now, afterAll));
  plain = await furnished(await openShop({}, () => now, afterAll));
  now = new Date(ASKED);
});

const DAY_MS = 86_400_000;
const CLEARANCES = ["handheld", "handheld-with-care", "table-only"] as const;

const get = async ({ shop }: World, path: string) => (await shop.ask("GET", path)).body;
const post = async ({ shop }: World, path: string, body: object) =>
  (await shop.ask("POST", path, { body })).body;
const tighten = async ({ shop }: World, layer: PolicyLayer) => {
  const { status } = await shop.ask("PUT", "/v1/shop-policy", {
    body: { layer },
    headers: { "If-Match": "*" },
  });
  expect(status).toBe(200);
};
const namesFound = async (world: World, query: string) => {
  const { data } = await get(world, `/v1/bits?limit=200&${query}`);
  return data.map(({ name }: { name: string }) => name).sort();
};
const namesOf = (world: World, wanted: (bit: World["bits"][number]["bit"]) => boolean) =>
  world.bits
    .filter(({ bit }) => wanted(bit))
    .map(({ name }) => name)
    .sort();

/** What lists say under the policy, which the domain computes again from the bits. */
async function checkLists(world: World, policy: Policy, areReadingsYoung: boolean): Promise<string> {
  const said: unknown[] = [];
  for (const clearance of CLEARANCES) {
    const found = await namesFound(world, `clearance=${clearance}`);
    expect(found, clearance).toEqual(namesOf(world, (bit) => clearanceOf(bit, policy) === clearance));
    said.push(found);
  }
  const router = await get(world, `/v1/routers/${world.routerId}`);
  const readings = [
    { mark: 2, rpm: 11_800 },
    { mark: 3, rpm: 15_700 },
  ];
  const dial = { ...router.dial, ...(areReadingsYoung && { readings }) };
  const speeds = dialSpeeds({ ...router, dial }, policy);
  const fitting = await namesFound(world, `fitsRouterId=${world.routerId}`);
  expect(fitting).toEqual(
    namesOf(world, (bit) => {
      const { hard, guide } = bitCeilings(bit, policy);
      const runs = speeds.some(({ rpm, rpmHighest }) => rpmHighest <= hard && rpm <= guide);
      return runs && hasColletFor(bit.shankDiameterMm, router);
    }),
  );
  said.push(fitting);
  return JSON.stringify(said);
}

/** When bits are inspected, and what is left of their edges. */
async function checkUpkeep(world: World, policy: Policy): Promise<string> {
  const said: unknown[] = [];
  const wood = woodById("black-cherry");
  if (wood === undefined) throw new Error("no wood");
  for (const { id, name, bit } of world.bits) {
    const { inspectionDueAt, used } = await get(world, `/v1/bits/${id}`);
    const byDays = new Date(
      new Date(ENTERED).getTime() + policy.inspectionIntervalDays * DAY_MS,
    ).toISOString();
    const isCut = used.metresSinceInspection >= policy.inspectionIntervalM;
    expect(inspectionDueAt, name).toBe(isCut && byDays > ASKED ? ASKED : byDays);
    const uses = used.metres > 0 ? [{ wood, metres: used.metres }] : [];
    const life = edgeLife({ toothMaterial: toothOf(name), uses }, policy);
    const diameterMm = "diameterMm" in bit.form ? (bit.form.diameterMm ?? 0) : 0;
    const left = sharpeningsLeft({ diameterMm, smallestDiameterMm: 0.9 * diameterMm, past: [] }, policy).left;
    const edge = await get(world, `/v1/bits/${id}/edge`);
    expect(edge, name).toMatchObject({
      expectedM: Math.floor(life.expectedM),
      isDue: life.dueForSharpening,
      sharpeningsLeft: left,
    });
    said.push(inspectionDueAt, edge.expectedM, edge.isDue, edge.sharpeningsLeft);
  }
  return JSON.stringify(said);
}

/** Plans and panels: what the shop tightens and what a request tightens come to the same, to the digest. */
async function checkPlans(layer: PolicyLayer): Promise<string> {
  const said: unknown[] = [];
  const ofPlain = planRequests(plain);
  for (const [index, request] of planRequests(tightened).entries()) {
    const plan = await post(tightened, "/v1/plans/preview", request);
    expect(plan).toEqual(await post(plain, "/v1/plans/preview", { ...ofPlain[index], policy: layer }));
    said.push({ ...plan, digest: "" });
  }
  const panels = await post(tightened, "/v1/panels/size", panelRequest(tightened));
  expect(panels).toEqual(await post(plain, "/v1/panels/size", { ...panelRequest(plain), policy: layer }));
  const { work, digest: _, ...sizes } = panels;
  said.push(sizes, work?.time);
  const table = async ({ shop: _shop, ...world }: World, policy: object) =>
    (
      await post({ shop: _shop, ...world }, "/v1/plans/shop-table", {
        ...policy,
        bitIds: world.bits.map(({ id }) => id),
        routerIds: [world.routerId],
        woodIds: ["black-cherry"],
        mounting: "handheld",
      })
    ).rows.map(
      ({ bitId: _bit, routerId: _router, ...figures }: { bitId: string; routerId: string }) => figures,
    );
  const rows = await table(tightened, {});
  expect(rows).toEqual(await table(plain, { policy: layer }));
  said.push(rows);
  return JSON.stringify(said);
}

async function checkTrials(world: World, policy: Policy): Promise<string> {
  const ids = { bitId: world.idOf("profile"), routerId: world.routerId };
  const trial = await made(world.shop, "/v1/speed-trials", { ...ids, mark: 1, vibrationMmPerS: 1 });
  expect(trial.outcome).toBe(trialOutcome(1, policy));
  await post(world, `/v1/speed-trials/${trial.id}/set-aside`, { reason: "Only tried." });
  const next = await get(
    world,
    `/v1/bits/${world.idOf("small")}/speed-trials/next?routerId=${world.routerId}`,
  );
  return JSON.stringify([trial.outcome, next]);
}

/** The hours of a job: what the shop tightens and what the job tightens come to the same. */
async function checkJob(layer: PolicyLayer): Promise<string> {
  const { minutes, order } = await post(tightened, "/v1/jobs/preview", jobRequest(tightened));
  expect({ minutes, order }).toEqual(
    await post(plain, "/v1/jobs/preview", { ...jobRequest(plain), policy: layer }).then((work) => ({
      minutes: work.minutes,
      order: work.order,
    })),
  );
  return JSON.stringify([minutes, order]);
}

/** Everything that a shop says under a layer, checked against the domain and against requests that bring the layer along. */
async function saidUnder(layer: PolicyLayer): Promise<string> {
  await tighten(tightened, layer);
  const policy = strictestPolicy(layer);
  return [
    await checkLists(tightened, policy, policy.dialReadingMaxAgeDays > 100),
    await checkUpkeep(tightened, policy),
    await checkPlans(layer),
    await checkTrials(tightened, policy),
    await checkJob(layer),
  ].join("\n");
}

let untightened: Promise<string> | undefined;

describe("every rule of the policy, tightened by the shop as far as it goes, acts everywhere it should", () => {
  // Rules about what people may do with the rack change no plan: their tests are in member-uses.test.ts.
  const ofPeople = ["loanTermMaxDays", "loggedUseMaxAgeDays", "loggedFeedMaxMPerMin", "holdsPerDayMax"];
  test.each(RULE_NAMES.filter((name) => !ofPeople.includes(name)))("%s", async (name) => {
    const { stricter, min, max } = RULES[name];
    untightened ??= saidUnder({});
    const usual = await untightened;
    const strict = await saidUnder({ [name]: stricter === "lower" ? min : max });
    expect(strict, "it changes something").not.toBe(usual);
    expect(await saidUnder({}), "loosened, everything is as it was").toBe(usual);
  });
});
