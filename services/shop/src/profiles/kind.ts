import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { ProfileSchema } from "./schema.ts";

export const profileKind = defineKind({
  type: "profile",
  noun: "profile",
  idPrefix: "profile",
  path: "/v1/profiles",
  tag: { name: "profiles", description: "The shop's own profiles, and which bits make one." },
  schema: ProfileSchema,
  table: "profiles",
});

export const profiles = recordQueries(profileKind);
