import type { FastifyRequest } from "fastify";
import type { ApprovalRecord } from "./record-schema.ts";

/** Drafts are nobody's but the instructors'; what names students is theirs alone. */
export function isForMember({ state, personIds }: ApprovalRecord, { caller }: FastifyRequest): boolean {
  if (caller?.role !== "member") return true;
  if (state === "draft") return false;
  return personIds === undefined || (caller.personId !== undefined && personIds.includes(caller.personId));
}
