import type { BitRecord } from "../bits/schema.ts";
import { secondsOf } from "../http/moment.ts";
import type { RouterRecord } from "../routers/schema.ts";
import type { ApprovalRecord, GroundsRecord } from "./record-schema.ts";
import type { ApprovedSheet } from "./sheet-schema.ts";

/** The kind of statement, as the `typ` of its header. */
export const SHEET_TYPE = "rimwise-setting+jws";

/** An approval's place in the status list, and where that is read. */
export type StatusPlace = { readonly index: number; readonly url: string };

/** What a sheet states: who signed, until when, and all that a person needs at the machine. Times in seconds (RFC 7519). */
export function sheetPayload(
  approval: ApprovalRecord,
  { results }: GroundsRecord,
  bit: BitRecord,
  router: RouterRecord,
  { index, url }: StatusPlace,
): ApprovedSheet {
  const [first] = results;
  if (first === undefined) throw new Error(`setting ${approval.id} was made from nothing`);
  const { plan } = first;
  return {
    iss: "rimwise",
    jti: approval.id,
    iat: secondsOf(approval.issuedAt ?? approval.updatedAt),
    nbf: secondsOf(approval.validFrom),
    exp: secondsOf(approval.validUntil),
    // As draft-ietf-oauth-status-list names it.
    status: { status_list: { idx: index, uri: url } },
    setting: {
      name: approval.name,
      courseId: approval.courseId,
      bit: {
        id: bit.id,
        name: bit.name,
        kind: bit.form.kind,
        shankDiameterMm: bit.shankDiameterMm,
        ...(bit.markedMaxRpm !== undefined && { markedMaxRpm: bit.markedMaxRpm }),
        ...("diameterMm" in bit.form && { diameterMm: bit.form.diameterMm }),
      },
      router: { id: router.id, name: router.name },
      mounting: approval.mounting,
      verdict: plan.verdict,
      mark: plan.speed.mark,
      rpm: plan.speed.rpm,
      rpmHighest: plan.speed.rpmHighest,
      ceilingRpm: plan.speed.ceilingRpm,
      bindingLimit: plan.speed.bindingLimit,
      woods: results.map(({ plan: { wood, passes, steps } }) => ({
        ...wood,
        passes: passes.map(({ number, kind, heightMm, cutterMm, fenceMm, feedMPerMin, secondsPerEdge }) => ({
          number,
          kind,
          heightMm,
          ...(cutterMm !== undefined && { cutterMm }),
          fenceMm,
          feedMPerMin,
          secondsPerEdge,
        })),
        steps: steps.map(({ text }) => text),
      })),
      findings: eachOnce(results.map((each) => each.plan.findings)),
      precautions: eachOnce(results.map((each) => each.plan.precautions)),
      advice: plan.advice,
      supervision: approval.supervision,
      ...(approval.skill !== undefined && { skill: approval.skill }),
      ...(approval.personIds !== undefined && { personIds: approval.personIds }),
      resultDigest: approval.resultDigest,
      inputDigest: approval.inputDigest,
      engineVersion: approval.engineVersion,
    },
  };
}

/** What the plans for all woods say, each sentence once. */
function eachOnce(lists: readonly (readonly { readonly text: string }[])[]): string[] {
  return [...new Set(lists.flat().map(({ text }) => text))];
}
