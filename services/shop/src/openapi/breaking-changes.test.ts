import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { breakingChanges } from "./breaking-changes.ts";

const BIT = {
  type: "object",
  required: ["id", "name"],
  properties: { id: { type: "string" }, name: { type: "string" }, wings: { type: "integer" } },
};
const NEW_BIT = {
  type: "object",
  required: ["name"],
  properties: {
    name: { type: "string", maxLength: 100 },
    kind: { type: "string", enum: ["cove", "ogee"] },
  },
};

function document(changes: { bit?: object; newBit?: object; operation?: object; parameters?: object[] }) {
  return {
    paths: {
      "/v1/bits": {
        post: {
          operationId: "createBit",
          parameters: changes.parameters ?? [{ name: "limit", in: "query", schema: { type: "integer" } }],
          requestBody: {
            required: true,
            content: { "application/json": { schema: { $ref: "#/components/schemas/NewBit" } } },
          },
          responses: {
            201: { content: { "application/json": { schema: { $ref: "#/components/schemas/Bit" } } } },
          },
          ...changes.operation,
        },
      },
    },
    components: { schemas: { Bit: changes.bit ?? BIT, NewBit: changes.newBit ?? NEW_BIT } },
  };
}

const found = (after: object, before: object = document({})) =>
  breakingChanges({ ...before }, { ...document({}), ...after }).map(({ where, what }) => `${where} ${what}`);

describe("what breaks a caller", () => {
  test.each<[string, object, string]>([
    ["an operation that is gone", { paths: {} }, "POST /v1/bits is gone"],
    [
      "another name of a method",
      document({ operation: { operationId: "addBit" } }),
      "POST /v1/bits is called addBit, no longer createBit",
    ],
    [
      "a parameter that is gone",
      document({ parameters: [] }),
      "POST /v1/bits no longer takes the parameter limit",
    ],
    [
      "a parameter that is needed",
      document({
        parameters: [
          { name: "limit", schema: {} },
          { name: "since", required: true, schema: {} },
        ],
      }),
      "POST /v1/bits needs the parameter since",
    ],
    [
      "a field that is needed",
      document({ newBit: { ...NEW_BIT, required: ["name", "kind"] } }),
      "POST /v1/bits body needs kind",
    ],
    [
      "a value that is refused",
      document({
        newBit: {
          ...NEW_BIT,
          properties: { ...NEW_BIT.properties, kind: { type: "string", enum: ["cove"] } },
        },
      }),
      "POST /v1/bits body.kind no longer accepts ogee",
    ],
    [
      "a lower limit",
      document({
        newBit: {
          ...NEW_BIT,
          properties: { ...NEW_BIT.properties, name: { type: "string", maxLength: 50 } },
        },
      }),
      "POST /v1/bits body.name has the maxLength 50",
    ],
    [
      "a choice that is refused",
      document({ newBit: { oneOf: [{ $ref: "#/components/schemas/Ogee" }] } }),
      "POST /v1/bits body no longer accepts Cove",
    ],
    [
      "a field of an answer that is gone",
      document({ bit: { ...BIT, properties: { id: BIT.properties.id, name: BIT.properties.name } } }),
      "POST /v1/bits 201 no longer has wings",
    ],
    [
      "a field of an answer that may be missing",
      document({ bit: { ...BIT, required: ["id"] } }),
      "POST /v1/bits 201 may lack name",
    ],
    [
      "another type",
      document({ bit: { ...BIT, properties: { ...BIT.properties, wings: { type: "string" } } } }),
      "POST /v1/bits 201.wings is string, no longer integer",
    ],
  ])("%s", (what, after, sentence) => {
    const choice = { oneOf: ["Cove", "Ogee"].map((name) => ({ $ref: `#/components/schemas/${name}` })) };
    const before = what === "a choice that is refused" ? document({ newBit: choice }) : document({});
    expect(found(after, before)).toEqual([sentence]);
  });
});

test("new operations, optional fields and parameters, and new fields of answers break nobody", () => {
  const after = document({
    bit: { ...BIT, properties: { ...BIT.properties, massG: { type: "number" } } },
    newBit: {
      ...NEW_BIT,
      properties: {
        ...NEW_BIT.properties,
        kind: { type: "string", enum: ["cove", "ogee", "bead"] },
        massG: { type: "number", minimum: 0 },
      },
    },
    parameters: [
      { name: "limit", schema: { type: "integer" } },
      { name: "q", schema: { type: "string" } },
    ],
  });
  expect(
    found({ ...after, paths: { ...after.paths, "/v1/jobs": { get: { operationId: "listJobs" } } } }),
  ).toEqual([]);
});

test("the description of today breaks nothing of itself, and all of it when everything is gone", () => {
  const today = JSON.parse(
    readFileSync(new URL("../../../../openapi/openapi.json", import.meta.url), "utf8"),
  );
  expect(breakingChanges(today, today)).toEqual([]);
  expect(breakingChanges(today, { paths: {} }).length).toBeGreaterThan(100);
});
