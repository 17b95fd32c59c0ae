import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { OPERATIONS, urlOf } from "../contract/bodies.ts";
import { type Furnished, furnish } from "../contract/furnish.ts";
import { CSV, manyStraights, NDJSON, straights } from "../contract/import-files.ts";
import { fieldsOf } from "../contract/request-schemas.ts";
import { PANEL_BIT, TABLE_ROUTER } from "../contract/shop.ts";
import { type CountedService, startCounted } from "./counted-service.ts";

let service: CountedService;
let furnished: Furnished;

beforeAll(async () => {
  service = await startCounted(afterAll);
  furnished = await furnish(async (path, body, key) => {
    const answer = await post(path, JSON.stringify(body), key);
    expect(answer.status, `POST ${path}`).toBeLessThan(300);
    return answer.json();
  });
  // What is compiled at first use is no part of what a refusal takes.
  for (const { method, ...operation } of withBody)
    await service.send(urlOf(operation, furnished.ids), {
      method,
      body: NOBODY_KNOWS,
      headers: JSON_HEADERS,
    });
  await service.stepsSince();
}, 60_000);

const JSON_HEADERS = { "content-type": "application/json", "if-match": "*" };

const post = (path: string, body: string, key?: string) =>
  service.send(path, {
    ...{ method: "POST", body },
    headers: { ...JSON_HEADERS, ...(key !== undefined && { authorization: `Bearer ${key}` }) },
  });

const withBody = OPERATIONS.filter(({ takesJson, isPublic }) => takesJson && !isPublic);

/** Ten times as many as are judged whole. */
const PIECES = 20_000;
const STEPS_OF_A_REQUEST = 3_000;

const NOBODY_KNOWS = '{"nobodyKnows":1}';

/**
 * What is in a body; steps a character that its refusals may take on average, little more than reading it does: to judge it member by
 * member is thousands; and the body, with an operation's first field.
 */
const WORST: readonly (readonly [string, number, (field: string) => string])[] = [
  [
    "thousands of empty objects in its first list",
    6.3,
    (field) => `{"${field}":[${"{},".repeat(PIECES)}{}]}`,
  ],
  [
    "thousands of members nobody knows",
    3,
    () => `{${Array.from({ length: PIECES / 4 }, (_, index) => `"x${index}":1`)}}`,
  ],
  ["one text as long as a body", 3.85, (field) => `{"${field}":"${"x".repeat(PIECES * 3)}"}`],
  [
    "lists in lists as deep as they may be",
    6.3,
    (field) => `{"${field}":${"[".repeat(60)}${"]".repeat(60)}}`,
  ],
];

describe.each(WORST)("a body with %s", (_name, stepsPerCharacter, bodyWith) => {
  let allowed = 0;

  test.each(withBody.map((operation) => [operation.id, operation] as const))(
    "is refused by %s",
    async (_id, operation) => {
      const [field = "x"] = fieldsOf(operation.bodySchema);
      const body = bodyWith(field);
      const { method } = operation;
      const path = urlOf(operation, furnished.ids);
      const answer = await service.send(path, { method, body, headers: JSON_HEADERS });
      await answer.arrayBuffer();
      expect(answer.status).toBeGreaterThanOrEqual(400);
      expect(answer.status).toBeLessThan(500);
      allowed += STEPS_OF_A_REQUEST + stepsPerCharacter * body.length;
    },
  );

  // To count takes longer than a refusal: once for all of them.
  test("is refused with little more work than it is read", async () => {
    expect(await service.stepsSince()).toBeLessThan(allowed);
  });
});

test("twice as many wrong requests in a batch are twice as much work, not four times", async () => {
  const wrong = (count: number) =>
    JSON.stringify({ requests: Array.from({ length: count }, () => ({ bit: 1 })) });
  const stepsOf = async (count: number) => {
    await (await post("/v1/plans/preview-batch", wrong(count))).arrayBuffer();
    return service.stepsSince();
  };
  await stepsOf(100);
  const [some, many] = [await stepsOf(250), await stepsOf(1000)];
  expect(many / some).toBeLessThan(5);
});

const { name: _bit, notes: _notes, ...BIT } = PANEL_BIT;
const { name: _router, ...ROUTER } = TABLE_ROUTER;
const PLAN = {
  ...{ bit: BIT, router: ROUTER, mounting: "table", woodId: "black-cherry" },
  cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 460, grain: "long" }] },
};

test("nothing is computed on after the connection of its caller was closed", async () => {
  const bodyOf = (count: number) => JSON.stringify({ requests: Array.from({ length: count }, () => PLAN) });
  const ask = (body: string, signal?: AbortSignal) =>
    service.send("/v1/plans/preview-batch", {
      ...{ method: "POST", body, headers: JSON_HEADERS },
      ...(signal && { signal }),
    });
  const statusOfOne = async () => {
    const answer = await ask(bodyOf(1));
    await answer.arrayBuffer();
    return answer.status;
  };
  await service.stepsSince();
  await (await ask(bodyOf(1000))).arrayBuffer();
  const whole = await service.stepsSince();

  const controller = new AbortController();
  const answer = ask(bodyOf(1000), controller.signal).catch(({ name }: Error) => name);
  // A key's door is shut while a computation of it runs.
  while ((await statusOfOne()) !== 429);
  controller.abort();
  expect(await answer).toBe("AbortError");
  while ((await statusOfOne()) === 429);
  expect(await service.stepsSince()).toBeLessThan(whole / 2);
});

const MEBIBYTE = 1024 * 1024;
const HEADER = straights(["First"]);

const ATTACKS: readonly [string, string, () => string][] = [
  ["a million rows of commas", CSV, () => HEADER + ",,,,,\r\n".repeat(1_000_000)],
  ["a million rows of commas and quotes", CSV, () => `${HEADER}${'"","",""\n'.repeat(1_000_000)}`],
  ["megabytes of empty lines", CSV, () => HEADER + "\n".repeat(30 * MEBIBYTE)],
  ["megabytes of empty lines before anything", CSV, () => "\n".repeat(30 * MEBIBYTE)],
  ["megabytes of empty lines", NDJSON, () => "\n".repeat(30 * MEBIBYTE)],
  ["megabytes of spaces and line ends", NDJSON, () => " \r\n".repeat(10 * MEBIBYTE)],
  ["rows of 65,000 cells", CSV, () => HEADER + `${"x,".repeat(32_000)}\n`.repeat(480)],
  [
    "rows of 65,000 empty cells behind a good one",
    CSV,
    () => HEADER + `x${",".repeat(65_000)}\n`.repeat(480),
  ],
  ["a first line that names 30,000 columns", CSV, () => `${"massg,".repeat(10_000)}\nx\n`],
];

describe("a file made to keep the service busy", () => {
  let ofGoodFile: number;

  /** What a file is answered with, and the steps that takes. */
  async function sent(file: string, type: string) {
    const headers = { "content-type": type };
    await service.stepsSince();
    const answer = await service.send("/v1/bits/import", { method: "POST", body: file, headers });
    const body = await answer.json();
    return { status: answer.status, steps: await service.stepsSince(), body };
  }

  const lastSequence = async () => (await (await post("/v1/events/verify", "{}")).json()).lastSequence;

  beforeAll(async () => {
    const { status, steps, body } = await sent(manyStraights(1000), CSV);
    expect([status, body.created]).toEqual([200, 1000]);
    expect(steps).toBeGreaterThan(100 * 1000);
    ofGoodFile = steps;
  });

  test.each(ATTACKS)(
    "of %s (%s) is refused, says why, and is no more work than a few good ones",
    async (_what, type, make) => {
      const before = await lastSequence();
      const { status, steps, body } = await sent(make(), type);
      expect(status).toBe(422);
      expect(body.report.isComplete).toBe(false);
      expect(body.report.faults.at(-1).message).toMatch(/too many (empty rows|cells|rows)/);
      // Read whole it would be hundreds of times as much, in one turn that nobody else gets a part of.
      expect(steps).toBeLessThan(4 * ofGoodFile);
      const { data } = await (await service.send(`/v1/events?type=bit.created&after=${before}`)).json();
      expect(data).toEqual([]);
    },
  );
});
