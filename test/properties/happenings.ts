import { expect } from "vitest";
import { PANEL_BIT, type Shop, TABLE_ROUTER } from "../contract/shop.ts";

const DAY_MS = 24 * 60 * 60 * 1000;

/** One thing that happens to what a setting rests on, or to something near it. */
export type Happening = { readonly name: string; readonly run: (stage: Stage) => Promise<unknown> };

export type Stage = {
  readonly shop: Shop;
  readonly bitId: string;
  readonly routerId: string;
  readonly courseId: string;
  readonly personId: string;
  readonly placeId: string;
  readonly request: object;
  readonly approvalId: string;
};

/** Something that happened must have been accepted, or nothing was tried. */
async function post({ shop }: Stage, url: string, body: object = {}) {
  const answer = await shop.ask("POST", url, { body });
  expect(answer.status, `${url} ${answer.text}`).toBeLessThan(300);
  return answer;
}

async function patch({ shop }: Stage, url: string, body: object): Promise<void> {
  const { headers } = await shop.ask("GET", url);
  const changed = await shop.ask("PATCH", url, { body, headers: { "If-Match": headers["etag"] ?? "" } });
  expect(changed.status, `${url} ${changed.text}`).toBe(200);
}

/** These change nothing that a plan depends on. */
export const HARMLESS: readonly Happening[] = [
  { name: "a note", run: (stage) => patch(stage, `/v1/bits/${stage.bitId}`, { notes: "Seen." }) },
  { name: "another name", run: (stage) => patch(stage, `/v1/bits/${stage.bitId}`, { name: "The big one" }) },
  {
    name: "a price",
    run: (stage) => patch(stage, `/v1/bits/${stage.bitId}`, { cost: { amount: 80, currency: "EUR" } }),
  },
  {
    name: "another place",
    run: (stage) => patch(stage, `/v1/bits/${stage.bitId}`, { homePlaceId: stage.placeId }),
  },
  {
    name: "a router's note",
    run: (stage) => patch(stage, `/v1/routers/${stage.routerId}`, { notes: "Oiled." }),
  },
  {
    name: "a count",
    run: (stage) => post(stage, `/v1/places/${stage.placeId}/stock-takes`, { bitIds: [stage.bitId] }),
  },
  {
    name: "a clean inspection",
    run: (stage) => post(stage, `/v1/bits/${stage.bitId}/inspections`, { findings: [], effect: "note" }),
  },
  {
    name: "a course's name",
    run: (stage) => patch(stage, `/v1/courses/${stage.courseId}`, { name: "Second year" }),
  },
  { name: "a cut that was fine", run: (stage) => post(stage, "/v1/uses", useOf(stage, "fine")) },
  {
    name: "a loan and its return",
    run: async (stage) => {
      const { body } = await post(stage, "/v1/loans", { bitId: stage.bitId, personId: stage.personId });
      await post(stage, `/v1/loans/${body.id}/return`);
    },
  },
];

/** These may change the plan, or not: a trial that ran free below the ceiling may leave all as it was. */
export const DOUBTFUL: readonly Happening[] = [
  { name: "a weighing", run: (stage) => patch(stage, `/v1/bits/${stage.bitId}`, { massG: 300 }) },
  {
    name: "a run-out in the record",
    run: (stage) => patch(stage, `/v1/bits/${stage.bitId}`, { runOutMm: 0.09 }),
  },
  { name: "a marking", run: (stage) => patch(stage, `/v1/bits/${stage.bitId}`, { markedMaxRpm: 11_000 }) },
  {
    name: "a sharpening",
    run: (stage) => post(stage, `/v1/bits/${stage.bitId}/sharpenings`, { diameterMm: 88.2 }),
  },
  { name: "a touch-up", run: (stage) => post(stage, `/v1/bits/${stage.bitId}/sharpenings`, {}) },
  {
    name: "a trial that shook",
    run: (stage) => post(stage, "/v1/speed-trials", { ...pairOf(stage), mark: 1, outcome: "shook" }),
  },
  {
    name: "a trial that ran free",
    run: (stage) => post(stage, "/v1/speed-trials", { ...pairOf(stage), mark: 1, outcome: "ran-free" }),
  },
  {
    name: "a run-out reading",
    run: (stage) =>
      post(stage, "/v1/run-out-readings", { ...pairOf(stage), runOutMm: 0.2, instrument: "dial indicator" }),
  },
  {
    name: "a dial reading",
    run: (stage) =>
      post(stage, `/v1/routers/${stage.routerId}/dial-readings`, {
        mark: 2,
        rpm: 12_400,
        instrument: "optical tachometer",
      }),
  },
  {
    name: "a weaker router",
    run: (stage) => patch(stage, `/v1/routers/${stage.routerId}`, { inputPowerW: 900 }),
  },
  {
    name: "a held collet",
    run: (stage) =>
      post(stage, "/v1/collets", {
        name: "1/2 in",
        routerId: stage.routerId,
        diameterMm: 12.7,
        condition: "held",
      }),
  },
  { name: "chatter", run: (stage) => post(stage, "/v1/uses", useOf(stage, "chattered")) },
  { name: "a bit that came loose", run: (stage) => post(stage, "/v1/uses", useOf(stage, "came-loose")) },
  {
    name: "a hold",
    run: (stage) => post(stage, `/v1/bits/${stage.bitId}/hold`, { reason: "A tooth looks odd." }),
  },
  {
    name: "a course's policy",
    run: (stage) => patch(stage, `/v1/courses/${stage.courseId}`, { policy: { rimSpeedMaxMPerS: 50 } }),
  },
  { name: "the shop's policy", run: (stage) => setShopPolicy(stage.shop, { rimSpeedMaxMPerS: 45 }) },
];

function pairOf({ bitId, routerId }: Stage) {
  return { bitId, routerId };
}

function useOf(stage: Stage, outcome: string) {
  return { ...pairOf(stage), woodId: "black-cherry", metres: 3, minutes: 2, outcomes: [outcome] };
}

/** What decides in the plan as anybody can ask for it now: what a person does by it. Its remarks are no part of that. */
export async function planned({ shop, request, courseId }: Stage): Promise<unknown> {
  const { body: course } = await shop.ask("GET", `/v1/courses/${courseId}`);
  const { status, body } = await shop.ask("POST", "/v1/plans/preview", {
    body: { ...request, policy: course.policy },
  });
  if (status !== 200) return { refused: body.code };
  const { verdict, mounting, speed, passes, precautions } = body;
  return {
    ...{ verdict, clearance: mounting.allowed },
    precautions: precautions.map(({ code }: { code: string }) => code),
    ...{ mark: speed.mark, rpm: speed.rpm, ceilingRpm: speed.ceilingRpm },
    passes: passes.map(({ heightMm, fenceMm, feedMPerMin }: Record<string, number>) => [
      heightMm,
      fenceMm,
      feedMPerMin,
    ]),
  };
}

export async function stateOf({ shop, approvalId }: Stage): Promise<string> {
  return (await shop.ask("GET", `/v1/approvals/${approvalId}`)).body.state;
}

async function setShopPolicy(shop: Shop, layer: object): Promise<void> {
  const { headers } = await shop.ask("GET", "/v1/shop-policy");
  const changed = await shop.ask("PUT", "/v1/shop-policy", {
    body: { layer },
    headers: { "If-Match": headers["etag"] ?? "" },
  });
  expect(changed.status, changed.text).toBe(200);
}

/** A bit, a router, a course and a setting of their own. */
export async function openStage(shop: Shop): Promise<Stage> {
  await setShopPolicy(shop, {});
  const made = async (url: string, body: object) => (await shop.ask("POST", url, { body })).body;
  const { markedMaxRpm: _, ...unmarked } = PANEL_BIT;
  const bit = await made("/v1/bits", unmarked);
  const router = await made("/v1/routers", TABLE_ROUTER);
  const place = await made("/v1/places", { name: "Rack 2", kind: "rack" });
  const person = await made("/v1/people", { name: "Bench 3", role: "member" });
  const course = await made("/v1/courses", {
    name: "First year",
    policy: {},
    requirements: {},
    isTwoPerson: false,
  });
  const request = {
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
  };
  const plan = await made("/v1/plans", request);
  const draft = await made("/v1/approvals", {
    name: "Door panels",
    courseId: course.id,
    planId: plan.id,
    supervision: "beside",
    validUntil: new Date(Date.now() + 30 * DAY_MS).toISOString(),
  });
  const head = await made("/v1/people", { name: "Head of the shop", role: "manager" });
  const { key } = await made("/v1/keys", { name: "Own", personId: head.id });
  const issued = await shop.ask("POST", `/v1/approvals/${draft.id}/issue`, { key });
  expect(issued.body.state).toBe("issued");
  return {
    shop,
    bitId: bit.id,
    routerId: router.id,
    courseId: course.id,
    personId: person.id,
    placeId: place.id,
    request,
    approvalId: draft.id,
  };
}
