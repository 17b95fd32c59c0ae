import { bodyOf } from "../contract/bodies.ts";
import { made } from "../contract/crib.ts";
import type { Furnished } from "../contract/furnish.ts";
import type { Shop } from "../contract/shop.ts";

/** What a write is then called with, where it differs. */
export type Change = {
  readonly ids?: Readonly<Record<string, string>>;
  readonly body?: object;
};
export type Prepared = { readonly shop: Shop; readonly furnished: Furnished };

const reason = "Looked at by the bench lead.";

/** What must be so before some operations can succeed. */
export const BEFORE: Readonly<Record<string, (prepared: Prepared) => Promise<Change>>> = {
  releaseBit: async ({ shop, furnished: { ids } }) => {
    await made(shop, `/v1/bits/${ids["bitId"]}/hold`, { reason });
    await made(shop, `/v1/bits/${ids["bitId"]}/inspections`, { findings: [], effect: "note" });
    return {};
  },
  retireBit: returned,
  sendBitToSharpening: returned,
  deleteBit: async ({ shop }) => ({
    ids: { bitId: (await made(shop, "/v1/bits", bodyNamed("createBit"))).id },
  }),
  deletePlace: async ({ shop }) => ({
    ids: { placeId: (await made(shop, "/v1/places", { name: "Drawer 9", kind: "drawer" })).id },
  }),
  deleteRouter: async ({ shop }) => ({
    ids: { routerId: (await made(shop, "/v1/routers", bodyNamed("createRouter"))).id },
  }),
  createLoan: returned,
  createKey: async () => ({ body: { name: "Another", role: "member" } }),
  createManyPeople: async () => ({
    body: { data: [{ name: "Somebody else", role: "member", key: { name: "Own" } }] },
  }),
  createEnrolment: async ({ shop }) => {
    const { id } = await made(shop, "/v1/people", { name: "Somebody new", role: "member" });
    return { body: { personId: id, part: "student" } };
  },
  createManyEnrolments: async ({ shop }) => {
    const { id } = await made(shop, "/v1/people", { name: "Somebody new", role: "member" });
    return { body: { data: [{ personId: id, part: "student" }] } };
  },
  issueApproval: async ({ shop, furnished: { ids, keys } }) => {
    const draft = await made(shop, "/v1/approvals", { ...bodyNamed("createApproval", ids) }, keys.instructor);
    return { ids: { approvalId: draft.id } };
  },
  reissueApproval: async ({ shop, furnished: { ids } }) => {
    const { body } = await shop.ask("GET", `/v1/approvals/${ids["approvalId"]}/difference`);
    return { body: { resultDigest: body.resultDigest } };
  },
  correctPlan: async ({ shop }) => {
    const { bit: _, ...plan } = Object(bodyNamed("createPlan"));
    const straight = {
      form: { kind: "straight", diameterMm: 19.05, cuttingLengthMm: 25.4 },
      ...{ shankDiameterMm: 12.7, wings: 2 },
    };
    const cut = { kind: "rabbet", depthMm: 9.53, widthMm: 8, edges: [{ lengthMm: 600, grain: "long" }] };
    const stored = await made(shop, "/v1/plans", { ...plan, bit: straight, cut });
    return { ids: { planId: stored.id }, body: { depthMm: 9.4 } };
  },
  reopenJob: async ({ furnished: { ids } }) => readyJobOf(ids),
  finishJobSetup: async ({ shop, furnished: { ids } }) => {
    const { body } = await shop.ask("GET", `/v1/jobs/${ids["readyJobId"]}`);
    return { ...readyJobOf(ids), body: { setupId: body.work.setups[0].id, outcomes: ["fine"] } };
  },
  draftJobApprovals: async ({ furnished: { ids } }) => ({
    body: bodyNamed("draftJobApprovals", ids),
  }),
  askCheck: async ({ furnished: { ids } }) => ({ body: { ...bodyNamed("askCheck", ids), isRecorded: true } }),
};

function readyJobOf(ids: Furnished["ids"]): Change {
  return { ids: { jobId: ids["readyJobId"] ?? "" } };
}

async function returned({ shop, furnished: { ids } }: Prepared): Promise<Change> {
  await made(shop, `/v1/loans/${ids["loanId"]}/return`, {});
  return {};
}

function bodyNamed(id: string, ids: Furnished["ids"] = {}) {
  return bodyOf({ id }, ids);
}
