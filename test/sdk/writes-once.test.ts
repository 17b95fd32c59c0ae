import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Client, createClient } from "@rimwise/client";
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from "vitest";
import { copyOf } from "../../services/shop/testing/behind-the-service.ts";
import { serverUnderTest } from "../../services/shop/testing/database-under-test.ts";
import { describeOnSqlite } from "../../services/shop/testing/one-engine.ts";
import { bodyOf, OPERATIONS, type Operation, urlOf } from "../contract/bodies.ts";
import { lastSequence, made } from "../contract/crib.ts";
import { addExample, type Examples, expectKept } from "../contract/examples.ts";
import { type Furnished, furnish } from "../contract/furnish.ts";
import { sendFile, straights } from "../contract/import-files.ts";
import { openShop, type Shop } from "../contract/shop.ts";
import { BEFORE } from "./before-writes.ts";
import { namesOperation } from "./method-names.ts";

type Documented = { operationId: string; tags: [string]; parameters?: { name: string }[] };
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
  "fitTemplate",
  "solveJoint",
  "convertOutline",
  "drawBit",
  "drawJob",
  "drawJoint",
  "drawPanel",
  "drawPlan",
  "drawProfile",
  "previewCorrection",
  "previewJob",
  "previewManyPlans",
  "previewPlan",
  "printPlan",
  "searchProfile",
  "sizePanels",
  "tabulatePlans",
  "verifyEvents",
];
const writes = OPERATIONS.filter(({ method, id }) => method !== "GET" && !QUESTIONS.includes(id));

/** Operations that a shop on PostgreSQL refuses: it has tools of its own for backups. */
const ON_SQLITE_ALONE = ["createBackup", "listBackups"];
const isHere = ({ id }: Operation) => serverUnderTest() === undefined || !ON_SQLITE_ALONE.includes(id);

/** Answers that hold a secret: it is shown once, and the second answer says so. */
const SECRET = ["createKey", "rotateKey", "createManyPeople"];

test("every operation that writes takes an Idempotency-Key, and no other does", () => {
  expect(writes.length).toBeGreaterThan(40);
  expect(OPERATIONS.filter(({ id }) => takes(id, "Idempotency-Key")).map(({ id }) => id)).toEqual(
    writes.map(({ id }) => id),
  );
});

/** When everything in the examples happens. */
const AT = new Date("2026-03-02T08:00:00.000Z");
const examples: Examples = new Map();

let template: Shop;
let furnished: Furnished;
beforeAll(async () => {
  template = await openShop(backupsIn(emptyFolder(afterAll)), () => AT, afterAll);
  const validUntil = new Date(AT.getTime() + 30 * 86_400_000).toISOString();
  furnished = await furnish((path, body, key) => made(template, path, body, key), validUntil);
});

/** A shop of its own with everything in it: furnishing takes longer than copying what was furnished once. */
async function furnishedShop(): Promise<Shop> {
  const folder = emptyFolder();
  const signingKeys = join(folder, "signing-keys.json");
  if (existsSync(template.signingKeys)) copyFileSync(template.signingKeys, signingKeys);
  const file = await copyOf(template, folder);
  const settings = {
    RIMWISE_DATABASE: file,
    RIMWISE_FIRST_KEY: template.managerKey,
    RIMWISE_SIGNING_KEYS: signingKeys,
    ...backupsIn(folder),
  };
  return openShop(settings, () => AT);
}

describe("an answer that is lost after the write: the next attempt gets it, and nothing is done twice", () => {
  test.each(writes.filter(isHere).map((each) => [each.id, each] as const))("%s", async (id, operation) => {
    const shop = await furnishedShop();
    const change = (await BEFORE[id]?.({ shop, furnished })) ?? {};
    const ids = { ...furnished.ids, ...change.ids };
    const baseUrl = await shop.app.listen({ host: "127.0.0.1", port: 0 });
    const lost: { text: string; sequence: number }[] = [];
    const keys: (string | null)[] = [];
    const body = change.body ?? (operation.takesJson ? bodyOf(operation, ids) : undefined);
    const client = createClient({
      baseUrl,
      key: furnished.keys.manager,
      fetch: async (request) => {
        keys.push(request.headers.get("idempotency-key"));
        const response = await fetch(request);
        if (lost.length > 0) return response;
        const text = await response.text();
        lost.push({ text, sequence: await lastSequence(shop) });
        const sent = operation.takesJson && { body };
        addExample(examples, operation, { ...sent, status: response.status, ...answerOf(response, text) });
        // As a gateway that lost its upstream answers: after the write, and to be asked again at once.
        return Response.json(
          { type: "about:blank", title: "Lost", status: 503, code: "lost", detail: "Lost." },
          { status: 503, headers: { "content-type": "application/problem+json", "retry-after": "0" } },
        );
      },
    });
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

describe("the examples of the API description", () => {
  const asked = OPERATIONS.filter(
    ({ id, isEndless }) => !writes.some((each) => each.id === id) && !isEndless && !NOT_JSON.includes(id),
  );

  let ids: Furnished["ids"];
  beforeAll(async () => {
    const { body } = await sendFile(template, straights(["First", "Second"]));
    ids = { ...furnished.ids, importId: body.importId };
  });

  test.each(asked.filter(isHere).map((each) => [each.id, each] as const))(
    "%s answers",
    async (id, operation) => {
      const url = urlOf(operation, ids);
      const body = operation.takesJson ? bodyOf(operation, ids) : undefined;
      const short = operation.query.includes("limit") ? "?limit=2" : "";
      const query = QUERIES[id] ?? (() => short);
      const answer = await template.ask(operation.method, url + query(ids), {
        ...(body && { body }),
      });
      expect(answer.status, answer.text).toBe(200);
      if (id === "getApiDescription") return;
      addExample(examples, operation, {
        ...(body && { body }),
        status: 200,
        ...(answer.body && { answer: answer.body }),
      });
    },
  );

  describeOnSqlite("what it answers about backups is among them", () => {
    test("they are those that are kept", () => expectKept(examples));
  });
});

/** Files that the build makes. */
const NOT_JSON = ["getClientPackage"];

/** What some questions need in their query. */
const QUERIES: Readonly<Record<string, (ids: Furnished["ids"]) => string>> = {
  // The first key was made before the clock of the examples began.
  listEvents: () => "?after=2&limit=2",
  listKeys: () => "?limit=2&sort=-createdAt",
  getBitLabels: ({ bitId }) => `?ids=${bitId}`,
  getRouterLabels: ({ routerId }) => `?ids=${routerId}`,
  getApprovalLabels: ({ approvalId }) => `?ids=${approvalId}`,
  proposeSpeedTrial: ({ routerId }) => `?routerId=${routerId}`,
};

function answerOf(response: Response, text: string): { answer?: unknown } {
  const isJson = /[/+]json\b/.test(response.headers.get("content-type") ?? "");
  return isJson ? { answer: JSON.parse(text) } : {};
}

function emptyFolder(afterwards: (release: () => void) => void = onTestFinished): string {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-backups-"));
  afterwards(() => rmSync(folder, { recursive: true }));
  return folder;
}

/** None is made by itself. */
const backupsIn = (folder: string) => ({ RIMWISE_BACKUP_FOLDER: folder, RIMWISE_BACKUP_EVERY_HOURS: "0" });

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
