import { defineKind } from "../store/kind.ts";
import { SigningKeyRecordSchema } from "./record-schema.ts";

export const signingKeyKind = defineKind({
  type: "signing-key",
  noun: "signing key",
  idPrefix: "signingkey",
  schema: SigningKeyRecordSchema,
  table: "signing_keys",
  /** Not even sealed does the private half belong into the history. */
  privateFields: ["seal"],
});
