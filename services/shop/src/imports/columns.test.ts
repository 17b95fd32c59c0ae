import { FORMS } from "@rimwise/domain";
import { expect, test } from "vitest";
import { BIT_FIELD_NAMES } from "../bits/schema.ts";
import { COLUMN_NAMES, COLUMNS, columnAt } from "./columns.ts";

test("every field that a bit can be given has a column, and every column a field", () => {
  const fields = new Set(COLUMNS.map(({ path: [field] }) => field));
  expect([...fields].sort()).toEqual([...BIT_FIELD_NAMES].sort());
  expect(new Set(COLUMN_NAMES).size).toBe(COLUMN_NAMES.length);
});

test("a dimension means the same in every form that has it, so that it can have one column", () => {
  const meanings = new Map<string, string>();
  for (const { dimensions } of FORMS) {
    for (const [name, spec] of Object.entries(dimensions)) {
      const meaning = spec.type === "measure" ? spec.unit : spec.type;
      expect(meanings.get(name) ?? meaning, name).toBe(meaning);
      meanings.set(name, meaning);
    }
  }
});

test("a pointer into a bit names its column", () => {
  expect(columnAt("/massG")?.name).toBe("massG");
  expect(columnAt("/form/kind")?.name).toBe("kind");
  expect(columnAt("/form/segments/0/toMm")?.name).toBe("segments");
  expect(columnAt("/cost/currency")?.name).toBe("costCurrency");
  expect(columnAt("/massGrams")).toBeUndefined();
});
