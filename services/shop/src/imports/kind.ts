import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { ImportSchema } from "./schema.ts";

export const importKind = defineKind({
  type: "import",
  noun: "import",
  idPrefix: "import",
  path: "/v1/imports",
  tag: { name: "imports", description: "Files of bits that were taken in." },
  schema: ImportSchema,
  table: "imports",
});

export const imports = recordQueries(importKind);
