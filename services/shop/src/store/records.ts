import type { BitRecord } from "../bits/schema.ts";
import type { KeyRecord } from "../keys/schema.ts";
import type { PlanRecord } from "../plans/schema.ts";
import type { RouterRecord } from "../routers/schema.ts";

/** What the store keeps, one line per kind of record. */
export type Records = {
  bit: BitRecord;
  router: RouterRecord;
  key: KeyRecord;
  plan: PlanRecord;
};

export type RecordType = keyof Records;

/** What every kept record has. */
export type Kept = {
  readonly id: string;
  /** 1 when created, one more with each change. */
  readonly version: number;
  readonly createdAt: string;
  readonly updatedAt: string;
};
