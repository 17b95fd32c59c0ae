import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Client, createClient } from "@rimwise/client";
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from "vitest";
import { behindTheService } from "../contract/behind-the-service.ts";
import { bodyOf, OPERATIONS, type Operation, urlOf } from "../contract/bodies.ts";
import { lastSequence, made } from "../contract/crib.ts";
import { type Furnished, furnish } from "../contract/furnish.ts";
import { openShop, type Shop } from "../contract/shop.ts";
import { namesOperation } from "./method-names.ts";

type Documented = { operationId: string; tags: [string]; parameters?: { name: string }[] };
type Change = {
  readonly ids?: Readonly<Record<string, string>>;
  readonly body?: object;
};
type Prepared = { readonly shop: Shop; readonly furnished: Furnished };

const documented = new Map<string, Documented>(
  Object.values<Record<string, Documented>>(
    JSON.parse(readFileSync(new URL("../../openapi/openapi.json", import.meta.url), "utf8")).paths,
  )
    .flatMap((path) => Object.values(path))
    .map((operation) => [operation.operationId, operation]),
);
const takes = (id: string, header: string) =>
  documented.get(id)?.parameters?.some(({ name }) => name === header) === true;

/** What is sent with POST because it has a body, and writes nothing. */
const QUESTIONS = [
  "convertOutline",
  "previewCorrection",
  "previewManyPlans",
  "previewPlan",
  "sizePanels",
  "tabulatePlans",
  "verifyEvents",
];
const writes = OPERATIONS.filter(({ method, id }) => method !== "GET" && !QUESTIONS.includes(id));

/** Answers that hold a secret: it is shown once, and the second answer says so. */
const SECRET = ["createKey", "rotateKey", "createManyPeople"];

const because = "Looked at by the bench lead.";

/** What must be so before some operations can succeed. */
const BEFORE: Readonly<Record<string, (prepared: Prepared) => Promise<Change>>> = {
  releaseBit: async ({ shop, furnished: { ids } }) => {
    await made(shop, `/v1/bits/${ids["bitId"]}/hold`, { because });
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
  createBackup: async ({ shop }) => {
    // One is made by itself at the start; two at once are refused.
    await expect.poll(async () => (await shop.ask("GET", "/v1/backups")).body.data.length).toBe(1);
    return {};
  },
  askCheck: async ({ furnished: { ids } }) => ({ body: { ...bodyNamed("askCheck", ids), isRecorded: true } }),
};

test("every operation that writes takes an Idempotency-Key, and no other does", () => {
  expect(writes.length).toBeGreaterThan(40);
  expect(OPERATIONS.filter(({ id }) => takes(id, "Idempotency-Key")).map(({ id }) => id)).toEqual(
    writes.map(({ id }) => id),
  );
});

let template: Shop;
let furnished: Furnished;
beforeAll(async () => {
  template = await openShop({}, undefined, afterAll);
  furnished = await furnish((path, body, key) => made(template, path, body, key));
});

/** A shop of its own with everything in it: furnishing takes longer than copying what was furnished once. */
function furnishedShop(): Promise<Shop> {
  const folder = emptyFolder();
  const file = join(folder, "shop.sqlite");
  const signingKeys = join(folder, "signing-keys.json");
  const kept = `${template.file}.signing-keys.json`;
  if (existsSync(kept)) copyFileSync(kept, signingKeys);
  behindTheService(template, (database) => database.exec(`VACUUM INTO '${file}'`));
  return openShop({
    RIMWISE_DATABASE: file,
    RIMWISE_FIRST_KEY: template.managerKey,
    RIMWISE_SIGNING_KEYS: signingKeys,
    RIMWISE_BACKUP_FOLDER: folder,
  });
}

describe("an answer that is lost after the write: the next attempt gets it, and nothing is done twice", () => {
  test.each(writes.map((each) => [each.id, each] as const))("%s", async (id, operation) => {
    const shop = await furnishedShop();
    const change = (await BEFORE[id]?.({ shop, furnished })) ?? {};
    const ids = { ...furnished.ids, ...change.ids };
    const baseUrl = await shop.app.listen({ host: "127.0.0.1", port: 0 });
    const lost: { text: string; sequence: number }[] = [];
    const keys: (string | null)[] = [];
    const client = createClient({
      baseUrl,
      key: furnished.keys.manager,
      fetch: async (request) => {
        keys.push(request.headers.get("idempotency-key"));
        const response = await fetch(request);
        if (lost.length > 0) return response;
        lost.push({ text: await response.text(), sequence: await lastSequence(shop) });
        // As a gateway that lost its upstream answers: after the write, and to be asked again at once.
        return Response.json(
          { type: "about:blank", title: "Lost", status: 503, code: "lost", detail: "Lost." },
          { status: 503, headers: { "content-type": "application/problem+json", "retry-after": "0" } },
        );
      },
    });
    const body = change.body ?? (operation.takesJson ? bodyOf(operation, ids) : undefined);
    const outcome = await called(client, operation, ids, body).catch((error) => error);
    expect(keys).toEqual([expect.stringMatching(/^[0-9a-f]{32}$/), keys[0]]);
    if (SECRET.includes(id)) {
      expect(outcome).toMatchObject({ status: 409, code: "secret-shown-once" });
      expect(outcome.problem.detail).toMatch(/revoke|rotate/i);
    } else {
      expect(outcome.response, String(outcome)).toMatchObject({ isReplayed: true });
      const first = lost[0]?.text ?? "";
      expect(outcome.data).toEqual(first === "" ? undefined : JSON.parse(first));
    }
    expect(await lastSequence(shop)).toBe(lost[0]?.sequence);
  });
});

async function returned({ shop, furnished: { ids } }: Prepared): Promise<Change> {
  await made(shop, `/v1/loans/${ids["loanId"]}/return`, {});
  return {};
}

function bodyNamed(id: string, ids: Furnished["ids"] = {}) {
  return bodyOf({ id }, ids);
}

function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-backups-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  return folder;
}

/** Calls the method of the client that is this operation. */
async function called(
  client: Client,
  operation: Operation,
  ids: Readonly<Record<string, string>>,
  body: unknown,
  // biome-ignore lint/suspicious/noExplicitAny: the test says what it must be.
): Promise<any> {
  const description = documented.get(operation.id);
  const names = Object.entries(client).flatMap(([resource, methods]) =>
    Object.keys(methods).map((verb) => [resource, verb] as const),
  );
  const [resource, verb] = names.find(
    (each) => description && namesOperation(each.join("."), description),
  ) ?? ["", ""];
  const inPath = urlOf(operation, ids)
    .split("/")
    .filter((_, index) => operation.path.split("/")[index]?.startsWith("{"));
  const file = {
    contentType: "text/csv",
    data: "name,kind,diameterMm,cuttingLengthMm,shankDiameterMm,wings\nA,straight,12.7,25.4,12.7,2\n",
  };
  const given = [
    ...inPath,
    ...(operation.id === "importBits" ? [file] : body === undefined ? [] : [body]),
    ...(takes(operation.id, "If-Match") ? ["*"] : []),
  ];
  const answer: unknown = Reflect.apply(Reflect.get(Reflect.get(client, resource), verb), undefined, given);
  return Reflect.apply(Reflect.get(Object(answer), "withResponse"), undefined, []);
}
