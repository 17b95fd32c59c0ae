import { readFileSync } from "node:fs";
import { KINDS } from "@rimwise/shop";
import { expect, test } from "vitest";

type Schema = {
  readonly $ref?: string;
  readonly enum?: readonly string[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly items?: Schema;
  readonly properties?: Readonly<Record<string, Schema>>;
};

const read = (name: string) => readFileSync(new URL(`../../openapi/${name}`, import.meta.url), "utf8");
const { components }: { components: { schemas: Record<string, Schema> } } = JSON.parse(read("openapi.json"));
const { schemas } = components;

/** The schema a reference leads to; of what may be null, the other. */
function resolved(schema: Schema | undefined): Schema {
  if (schema?.$ref !== undefined) return resolved(schemas[schema.$ref.split("/").at(-1) ?? ""]);
  const [only] = (schema?.anyOf ?? []).filter((each) => "$ref" in each || "enum" in each);
  return only === undefined ? (schema ?? {}) : resolved(only);
}

function* fields(
  where: string,
  { properties = {}, items, anyOf, oneOf }: Schema,
): Generator<[string, Schema]> {
  for (const [name, field] of Object.entries(properties)) {
    yield [`${where}.${name}`, field];
    yield* fields(`${where}.${name}`, field);
  }
  for (const each of [...(items ? [items] : []), ...(anyOf ?? []), ...(oneOf ?? [])])
    yield* fields(where, each);
}

const everyField = Object.entries(schemas).flatMap(([name, schema]) => [...fields(name, schema)]);

test("every code in an answer is one of a closed list", () => {
  const codes = everyField.filter(([where]) => where.endsWith(".code"));
  expect(codes.length).toBeGreaterThan(10);
  for (const [where, field] of codes) expect(resolved(field).enum?.length, where).toBeGreaterThan(0);
});

test.each([
  "PlanToRun.verdict",
  "PlanSummary.verdict",
  "PlanSpeed.bindingLimit",
  "PlanSpeed.nextLimit",
  "PlanSpeed.basis",
  "SpeedLimit.name",
  "PlanMounting.allowed",
  "Setting.verdict",
  "Setting.bindingLimit",
  "Setting.clearance",
  "ApprovedSheet.setting.verdict",
  "ApprovedSheet.setting.bindingLimit",
  "SizedPanel.verdict",
  "BitChanged.type",
])("%s is one of a closed list", (where) => {
  const [, field] = everyField.find(([each]) => each === where) ?? [];
  expect(resolved(field).enum?.length).toBeGreaterThan(1);
});

test.each(["FasterSetting.breaks", "Setting.findings"])("each of %s is one of a closed list", (where) => {
  const [, field] = everyField.find(([each]) => each === where) ?? [];
  expect(resolved(field?.items).enum?.length).toBeGreaterThan(1);
});

test("of every kind of record there is an event that it was entered", () => {
  const entered = KINDS.map(({ type }) => `${type}.created`);
  expect(schemas["EventType"]?.enum).toEqual(expect.arrayContaining(entered));
});

test("the page of codes has every code of a list, and of each no other sentence than its own", () => {
  const page = read("CODES.md");
  const listed = new Map(
    [...page.matchAll(/^## (\w+)\n([^#]*)/gm)].map(([, name = "", table = ""]) => [
      name,
      [...table.matchAll(/^\| `([^`]+)` \| (.+?) \|/gm)].map(([, code, meaning = ""]) => ({ code, meaning })),
    ]),
  );
  const lists = Object.entries(schemas).filter(([name, schema]) => listed.has(name) && "enum" in schema);
  const coded = everyField
    .filter(([where]) => where.endsWith(".code"))
    .map(([, field]) => resolved(field).enum);
  const onPage = [...listed.values()].map((rows) => rows.map(({ code }) => code).join());
  expect(lists.length).toBeGreaterThan(10);
  for (const [name, schema] of lists) expect(onPage, name).toContain(schema.enum?.join());
  for (const codes of coded) expect(onPage).toContain(codes?.join());
  for (const rows of listed.values()) {
    for (const { code, meaning } of rows) expect(meaning, code).toMatch(/^[A-Z].*\.$/);
    expect(new Set(rows.map(({ meaning }) => meaning)).size).toBe(rows.length);
  }
});
