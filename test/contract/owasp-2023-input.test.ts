import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { importsOf, sourceFiles } from "../architecture/source-files.ts";
import { bodyOf, OPERATIONS, type Operation, urlOf } from "./bodies.ts";
import { addBit, lastSequence, made } from "./crib.ts";
import { type Furnished, furnish } from "./furnish.ts";
import { sendFile, straights } from "./import-files.ts";
import { answeredFields, bodySchemas, parameterSchemas, readOnlyFields } from "./request-schemas.ts";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

// The tests are named after the OWASP API Security Top 10, edition 2023: owasp.org/API-Security/editions/2023.

let shop: Shop;
let furnished: Furnished;

beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
  furnished = await furnish((path, body, key) => made(shop, path, body, key));
}, 60_000);

const withBody = OPERATIONS.filter(({ takesJson }) => takesJson).map((each) => [each.id, each] as const);
const readsJson = OPERATIONS.filter(({ method, isEndless }) => method === "GET" && !isEndless);
const send = (operation: Operation, body: object | string, headers: Record<string, string> = {}) =>
  shop.ask(operation.method, urlOf(operation, furnished.ids), {
    body,
    headers: { "If-Match": "*", ...headers },
    key: furnished.keys.manager,
  });

describe("API3:2023 Broken Object Property Level Authorization", () => {
  const NOBODYS = ["isAdmin", "keySha256", "previousSha256", "__proto", "$set"];

  test.each(withBody)(
    "%s takes no field that is only shown, and none that nobody knows",
    async (_id, operation) => {
      const extra = [...readOnlyFields(operation.id), ...NOBODYS];
      const before = await lastSequence(shop);
      const answer = await send(operation, {
        ...bodyOf(operation, furnished.ids),
        ...Object.fromEntries(extra.map((name) => [name, 1])),
      });
      expect(answer.status, answer.text).toBe(422);
      const pointers = answer.body.errors.map(({ pointer }: { pointer: string }) => pointer);
      for (const name of extra) expect(pointers).toContain(`/${name}`);
      expect(await lastSequence(shop)).toBe(before);
    },
  );

  test("no body is open to fields nobody declared, at any depth", () => {
    const open = bodySchemas().filter(
      ({ schema }) => schema.properties !== undefined && schema.additionalProperties !== false,
    );
    expect(open.map(({ at }) => at)).toEqual([]);
  });

  test("no answer has a field for a secret, but the one that shows a new key once", () => {
    const secrets = answeredFields().filter((name) =>
      /secret|password|digest$|token|^key$|keysha|previoussha/i.test(name),
    );
    // Fingerprints of plans, settings, whole records and erased fields are there to be compared.
    expect(secrets.sort()).toEqual([
      ...["digest", "inputDigest", "key", "privateDigest", "recordDigest", "resultDigest"],
    ]);
  });

  test("no answer to any read shows a key, its digest or the private half of a signing key", async () => {
    const kept = await behindTheService(shop, ({ rows }) => rows("SELECT key_sha256 AS digest FROM keys"));
    const digests = kept.map(({ digest }) => String(digest));
    expect(digests.length).toBeGreaterThan(1);
    for (const operation of readsJson) {
      const { text } = await shop.ask("GET", urlOf(operation, furnished.ids));
      expect(text, operation.id).not.toMatch(/rw_[0-9a-z]{8}|"d":"/);
      for (const digest of digests) expect(text, operation.id).not.toContain(digest);
    }
  });
});

describe("API4:2023 Unrestricted Resource Consumption", () => {
  test("every list of a body has a greatest length, every text too, every number bounds", () => {
    const isBounded = ({ at, schema }: ReturnType<typeof bodySchemas>[number]) => {
      const { type, maxItems, maxLength, enum: choices, pattern, format, maximum, exclusiveMaximum } = schema;
      if (choices !== undefined || schema.const !== undefined) return true;
      if (type === "array") return maxItems !== undefined;
      if (type === "string")
        return maxLength !== undefined || format === "date" || /^\^[^*+]*\$$/.test(pattern ?? "");
      if (type === "number" || type === "integer") return (maximum ?? exclusiveMaximum) !== undefined;
      return at !== "";
    };
    expect(
      bodySchemas()
        .filter((each) => !isBounded(each))
        .map(({ at }) => at),
    ).toEqual([]);
  });

  test("every list is by pages of 1 to 200", async () => {
    const lists = parameterSchemas().filter(({ name }) => name === "limit");
    expect(lists.length).toBeGreaterThan(15);
    for (const { at } of lists) {
      const operation = OPERATIONS.find(({ id }) => at === `${id}?limit`);
      if (operation === undefined || operation.isEndless) continue;
      for (const limit of ["0", "201", "-1", "1e9", "1.5", "NaN", "Infinity", ""]) {
        const answer = await shop.ask("GET", `${urlOf(operation, furnished.ids)}?limit=${limit}`);
        expect(answer.status, `${operation.id} ${limit}`).toBe(422);
        expect(answer.body.errors[0].pointer).toBe("/limit");
      }
    }
  });

  test.each(withBody)("%s takes no body of 8 MB, and none nested beyond reason", async (_id, operation) => {
    const before = await lastSequence(shop);
    expect((await send(operation, { notes: "x".repeat(8 * 1024 * 1024) })).status).toBe(413);
    for (const nested of [
      `${`{"a":`.repeat(20_000)}1${"}".repeat(20_000)}`,
      `{"a":${"[".repeat(50_000)}${"]".repeat(50_000)}}`,
    ]) {
      const { status, text } = await send(operation, nested);
      expect([400, 413, 422], text.slice(0, 300)).toContain(status);
    }
    expect(await lastSequence(shop)).toBe(before);
  });

  test("a caller who asks too often is asked to wait, in every operation alike", async () => {
    const own = await openShop({ RIMWISE_RATE_LIMIT_PER_MINUTE: "3" });
    const paths = OPERATIONS.filter(({ isPublic }) => !isPublic);
    const statuses: number[] = [];
    for (const { method, path } of paths) {
      statuses.push((await own.ask(method, path.replaceAll(/\{\w+\}/g, "none_0"))).status);
    }
    expect(statuses.slice(3)).toEqual(paths.slice(3).map(() => 429));
  });
});

describe("API6:2023 Unrestricted Access to Sensitive Business Flows", () => {
  const together = (count: number, act: () => ReturnType<Shop["ask"]>) =>
    Promise.all(Array.from({ length: count }, act));

  test("one bit cannot be taken by twenty at once", async () => {
    const { id: bitId } = await addBit(shop);
    const answers = await together(20, () =>
      shop.ask("POST", "/v1/loans", { body: { bitId, personId: furnished.ids["personId"] } }),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([201, ...Array(19).fill(409)]);
  });

  test("one person cannot join a course twenty times at once", async () => {
    const person = await made(shop, "/v1/people", { name: "Late", role: "member" });
    const url = `/v1/courses/${furnished.ids["courseId"]}/enrolments`;
    const answers = await together(20, () =>
      shop.ask("POST", url, { body: { personId: person.id, part: "student" } }),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([201, ...Array(19).fill(409)]);
  });

  test("one draft cannot be issued twice at once", async () => {
    const draft = await made(shop, "/v1/approvals", {
      ...{ name: "Panels", courseId: furnished.ids["courseId"], planId: furnished.ids["planId"] },
      ...{ supervision: "beside", validUntil: new Date(Date.now() + 86_400_000).toISOString() },
    });
    const answers = await together(5, () =>
      shop.ask("POST", `/v1/approvals/${draft.id}/issue`, { key: furnished.keys.manager }),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409, 409, 409, 409]);
  });
});

describe("API7:2023 Server Side Request Forgery", () => {
  test("no operation takes an address that the service could be made to fetch", () => {
    const fields = [...bodySchemas(), ...parameterSchemas()];
    expect(fields.length).toBeGreaterThan(300);
    for (const { at, schema } of fields) {
      expect(schema.format ?? "", at).not.toMatch(/uri|url|iri|hostname|ip/);
      expect(at).not.toMatch(/(url|uri|href|link|host|callback|webhook|endpoint)$/i);
    }
  });

  test("an address in a name stays a name", async () => {
    const bit = await addBit(shop, { name: "http://127.0.0.1:1/", notes: "file:///etc/passwd" });
    expect(bit).toMatchObject({ name: "http://127.0.0.1:1/", notes: "file:///etc/passwd" });
  });
});

describe("API10:2023 Unsafe Consumption of APIs", () => {
  const CLIENTS =
    /^(node:)?(http|https|http2|net|tls|dgram|dns)$|^(undici|axios|got|node-fetch|request|ws)(\/|$)/;
  /** Names of statuses: a list, no client. */
  const HARMLESS = 'import { STATUS_CODES } from "node:http";\n';

  test("the service calls no other API: no client is imported, and none that is built in is called", () => {
    const files = sourceFiles([".ts"]).filter(
      ({ path }) => /^(services\/shop|packages\/domain)\/src\//.test(path) && !path.endsWith(".test.ts"),
    );
    expect(files.length).toBeGreaterThan(150);
    for (const file of files) {
      const used = importsOf({ ...file, text: file.text.replace(HARMLESS, "") }).filter(
        ({ isTypeOnly }) => !isTypeOnly,
      );
      expect(
        used.filter(({ specifier }) => CLIENTS.test(specifier)),
        file.path,
      ).toEqual([]);
      expect(file.text, file.path).not.toMatch(/\b(fetch|WebSocket|EventSource|XMLHttpRequest)\(/);
    }
  });

  test("what a file brings is held to what a request is held to, in the same words", async () => {
    const tooWide = { ...PANEL_BIT, form: { kind: "straight", diameterMm: 120, cuttingLengthMm: 30 } };
    const { body: refused } = await shop.ask("POST", "/v1/bits", { body: tooWide });
    const before = await lastSequence(shop);
    const answer = await sendFile(shop, straights(["First"]).replace("straight,12,", "straight,120,"));
    expect(answer.status).toBe(422);
    expect(answer.text).toContain(refused.errors[0].accepted);
    for (const name of ["", " ", "x".repeat(101)]) {
      expect((await sendFile(shop, straights([name]))).status).toBe(422);
    }
    expect(await lastSequence(shop)).toBe(before);
  });
});
