import Type from "typebox";
import type { BitRecord } from "../bits/schema.ts";
import type { RouterRecord } from "../routers/schema.ts";
import type { ApprovalRecord, GroundsRecord } from "./record-schema.ts";

/** The kinds of statement that are signed here, as the `typ` of their headers. */
export const SHEET_TYPE = "rimwise-setting+jws";
export const STATUS_TYPE = "rimwise-status+jws";

const ISSUER = "rimwise";

export const SignedSheetSchema = Type.Object(
  {
    approvalId: Type.String({ description: "The setting." }),
    jws: Type.String({ description: "The sheet as a compact JWS (RFC 7515), `typ` rimwise-setting+jws." }),
    validUntil: Type.String({ format: "date-time", description: "When it expires." }),
  },
  {
    $id: "SignedSheet",
    description: "A setting signed, with all that a person needs at the machine.",
    additionalProperties: false,
  },
);

export const SignedStatusSchema = Type.Object(
  {
    jws: Type.String({
      description:
        "The list as a compact JWS, `typ` rimwise-status+jws: ids of settings that ended before their time.",
    }),
  },
  {
    $id: "SignedStatus",
    description: "Which sheets must no longer be believed.",
    additionalProperties: false,
  },
);

/** What a sheet states: who signed, until when, and all that a person needs at the machine. Times in seconds (RFC 7519). */
export function sheetPayload(
  approval: ApprovalRecord,
  { results }: GroundsRecord,
  bit: BitRecord,
  router: RouterRecord,
): object {
  const [first] = results;
  if (first === undefined) throw new Error(`setting ${approval.id} was made from nothing`);
  const { plan } = first;
  return {
    iss: ISSUER,
    jti: approval.id,
    iat: secondsOf(approval.issuedAt ?? approval.updatedAt),
    nbf: secondsOf(approval.validFrom),
    exp: secondsOf(approval.validUntil),
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
      dialMark: plan.speed.dialMark,
      rpm: plan.speed.rpm,
      rpmHighest: plan.speed.rpmHighest,
      ceilingRpm: plan.speed.ceilingRpm,
      bindingLimit: plan.speed.bindingLimit,
      woods: results.map(({ plan: { wood, passes, steps } }) => ({
        ...wood,
        passes: passes.map(({ number, kind, heightMm, fenceMm, feedMPerMin, secondsPerEdge }) => ({
          number,
          kind,
          heightMm,
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

/** How long a status list may be believed. */
const STATUS_HOLDS_S = 60 * 60;

/** What a status list states: the settings that ended before their time. */
export function statusPayload(endedIds: readonly string[], at: string): object {
  const iat = secondsOf(at);
  return { iss: ISSUER, iat, exp: iat + STATUS_HOLDS_S, ended: [...endedIds].sort() };
}

function secondsOf(moment: string): number {
  return Math.floor(new Date(moment).getTime() / 1000);
}

/** What the plans for all woods say, each sentence once. */
function eachOnce(lists: readonly (readonly { readonly text: string }[])[]): string[] {
  return [...new Set(lists.flat().map(({ text }) => text))];
}
