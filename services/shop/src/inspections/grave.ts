import type { BitFinding } from "./schema.ts";

/** What nobody may only note: a tooth that can fly, and a shank that cannot run true (common practice). */
export const GRAVE: readonly BitFinding[] = ["cracked-braze", "bent"];
