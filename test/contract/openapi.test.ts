import { readFileSync } from "node:fs";
import { PROBLEMS } from "@rimwise/shop";
import { describe, expect, test } from "vitest";
import { openShop } from "./shop.ts";

const written = JSON.parse(readFileSync(new URL("../../openapi/openapi.json", import.meta.url), "utf8"));

type Operation = { operationId: string; summary: string; tags: string[]; security: object[] };

type Contents = { content?: Record<string, { example?: unknown }> };
type Shown = { operationId: string; requestBody?: Contents; responses: Record<string, Contents> };

type Union = {
  discriminator?: { propertyName: string; mapping: Record<string, string> };
  oneOf?: { $ref: string }[];
};
type Property = { type?: string; anyOf?: { type?: string }[] };
type Properties = { properties?: Record<string, Property> };

/** Every field of every schema. Examples have fields too, and are none. */
function* fieldsOf(part: unknown, at = ""): Generator<{ name: string; at: string; schema: unknown }> {
  if (typeof part !== "object" || part === null) return;
  for (const [key, value] of Object.entries(part)) {
    if (key === "example") continue;
    if (key === "properties" && typeof value === "object") {
      for (const [name, schema] of Object.entries(value))
        yield { name, at: `${at}/properties/${name}`, schema };
    }
    yield* fieldsOf(value, `${at}/${key}`);
  }
}

const operations: Operation[] = Object.values<Record<string, Operation>>(written.paths).flatMap((path) =>
  Object.values(path),
);

describe("openapi/openapi.json", () => {
  test("is what the service describes itself as", async () => {
    const { ask } = await openShop();
    expect((await ask("GET", "/openapi.json", { key: null })).body).toEqual(written);
  });

  test("has a name, a summary and a tag for every operation, and every tag is described", () => {
    const names = operations.map(({ operationId }) => operationId);
    expect(new Set(names).size).toBe(names.length);
    const tags = written.tags.map(({ name }: { name: string }) => name);
    for (const { operationId, summary, tags: own } of operations) {
      expect(operationId).toMatch(/^[a-z][A-Za-z]+$/);
      expect(summary, operationId).toBeTruthy();
      expect(tags, operationId).toContain(own[0]);
    }
  });

  test("shows what every operation that speaks JSON is sent and answers, as the tests saw it", () => {
    const isShown = (content: Record<string, { example?: unknown }> = {}) =>
      Object.entries(content).every(
        ([type, { example }]) => !/[/+]json$/.test(type) || example !== undefined,
      );
    const without = Object.values<Record<string, object>>(written.paths)
      .flatMap((path) => Object.values(path))
      .filter((operation) => {
        const { operationId, requestBody, responses }: Shown = Object(operation);
        const answers = Object.entries(responses).filter(([status]) => status.startsWith("2"));
        if (operationId === "getApiDescription") return false;
        return !isShown(requestBody?.content) || !answers.every(([, { content }]) => isShown(content));
      });
    expect(without.map((operation) => Object(operation).operationId)).toEqual([]);
  });

  test("has the same problem codes as the service, both ways", () => {
    expect(written.components.schemas.Problem.properties.code.enum.sort()).toEqual(
      Object.keys(PROBLEMS).sort(),
    );
  });

  test("describes every field of every component", () => {
    for (const [name, schema] of Object.entries<{ properties?: Record<string, object> }>(
      written.components.schemas,
    )) {
      for (const [field, property] of Object.entries(schema.properties ?? {})) {
        const branches = "anyOf" in property ? Object(property).anyOf : [property];
        const isDescribed =
          // A constant says all there is to say of itself.
          "const" in property ||
          "description" in property ||
          branches.some((each: object) => "description" in each || "$ref" in each);
        expect(isDescribed, `${name}.${field} is described`).toBe(true);
      }
    }
  });

  test("has one name for why, and names what is so or not by is, has, are or may", () => {
    const named = [...fieldsOf(written)];
    expect(named.length).toBeGreaterThan(1000);
    for (const { at } of named.filter(({ name }) => /because|^why/i.test(name)))
      expect(at, "the history is hashed under this name").toMatch(
        /(Created|Changed|Removed)\/properties\/why$/,
      );
    const flags = named.filter(({ schema }) => Object(schema).type === "boolean");
    expect(flags.length).toBeGreaterThan(40);
    const wrong = flags.filter(({ name }) => !/^(is|has|are|may|can)[A-Z]/.test(name));
    // Readiness is a list of checks; polygons are asked for by what they are.
    expect(wrong.filter(({ at }) => !/Readiness/.test(at)).map(({ at }) => at)).toEqual([]);
  });

  test("leaves what is not known out of records: none of their fields is null", () => {
    const records = Object.entries<Properties>(written.components.schemas).filter(
      ([, { properties = {} }]) => "createdAt" in properties && "version" in properties,
    );
    expect(records.length).toBeGreaterThan(20);
    const nullable = records.flatMap(([name, { properties = {} }]) =>
      Object.entries(properties)
        .filter(([, { type, anyOf = [] }]) => type === "null" || anyOf.some((each) => each.type === "null"))
        .map(([field]) => `${name}.${field}`),
    );
    // Figures of the plan that is kept: computed, and null as in it.
    expect(nullable).toEqual(["PlanSummary.mark", "PlanSummary.rpm"]);
  });

  test("requires no query parameter", async () => {
    const { ask } = await openShop();
    for (const url of ["/v1/bits", "/v1/routers", "/v1/woods", "/v1/keys", "/v1/events"]) {
      expect((await ask("GET", url)).status).toBe(200);
      for (const { in: place, name, required } of written.paths[url].get.parameters) {
        if (place === "query") expect(required, `${url} ${name}`).toBe(false);
      }
    }
  });

  test("names the branch of every kind of every discriminator", () => {
    const { schemas } = written.components;
    const unions = Object.values<Union>(schemas).filter(({ discriminator }) => discriminator);
    expect(unions.length).toBeGreaterThan(2);
    for (const { discriminator, oneOf = [] } of unions) {
      const { propertyName = "", mapping = {} } = discriminator ?? {};
      expect(new Set(Object.values(mapping))).toEqual(new Set(oneOf.map(({ $ref }) => $ref)));
      for (const [kind, reference] of Object.entries(mapping)) {
        const told = schemas[reference.split("/").at(-1) ?? ""].properties[propertyName];
        expect(told.const === undefined ? told.enum : [told.const]).toContain(kind);
      }
    }
  });
});
