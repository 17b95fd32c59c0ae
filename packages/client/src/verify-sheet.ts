import type { ApprovedSheet, JsonWebKeySet, Mark } from "./generated/models.ts";
import { readSigned, type StatementFault } from "./signed-statement.ts";
import { type StatusFault, statusFaults } from "./status-list.ts";

/** `sheet` is what the sheet states, if its signature is good; a verdict that is not valid may have it too. */
export type SheetVerdict =
  | { readonly isValid: true; readonly sheet: ApprovedSheet; readonly reasons: readonly [] }
  | { readonly isValid: false; readonly sheet?: ApprovedSheet; readonly reasons: readonly SheetFault[] };

/** Why a sheet is no leave for what is about to be done. */
export type SheetFault = StatementFault | StatusFault | "not-yet" | "expired" | ExpectationFault;

type ExpectationFault =
  | "expected-missing"
  | "other-person"
  | "other-bit"
  | "other-router"
  | "other-mark"
  | "other-wood"
  | "other-mounting";

/** What is about to be done at the machine. */
export type ExpectedUse = {
  /** Who is about to do it. Needed for a sheet that is for named persons only. */
  readonly personId?: string | undefined;
  readonly bitId: string;
  readonly routerId: string;
  /** The mark the dial stands at; null for a router without a dial, whose speed is then set to the sheet's. */
  readonly mark: Mark | null;
  readonly woodId: string;
  readonly mounting: "table" | "handheld";
};

export type SheetOptions = {
  /** The service's public keys, as `client.signing.getJsonWebKeySet()` gives them; keep a copy to work offline. */
  readonly keys: JsonWebKeySet;
  /** The signed list of `client.approvals.status()`. Without it a sheet is not believed. */
  readonly status?: string | undefined;
  /** A sheet is valid for this use and no other. */
  readonly expected: ExpectedUse;
  /** Default: now. */
  readonly at?: Date | undefined;
  /** How far this clock may differ from the service's, in seconds, 0 to 300. Default: 0. */
  readonly clockLeewayS?: number | undefined;
};

const SHEET_TYPE = "rimwise-setting+jws";
const SECOND_MS = 1000;
const LONGEST_LEEWAY_S = 300;

/**
 * Checks without asking the service that a signed sheet is a leave for what is about to be done: its signature (Ed25519, RFC 8037),
 * its time, that the signed list of settings that ended early does not mark it, and that person, bit, router, mark, wood and mounting
 * are its own. Whatever cannot be made sure of is a reason why not; nothing is thrown. Who is in the course and qualified only the
 * service knows.
 */
export async function verifySheet(jws: string, options: SheetOptions): Promise<SheetVerdict> {
  try {
    return await verdictOn(jws, options);
  } catch {
    // Not what the types say, such as no keys at all: that is no sheet to rely on.
    return { isValid: false, reasons: ["not-a-sheet"] };
  }
}

async function verdictOn(
  jws: string,
  { keys, status, expected, at = new Date(), clockLeewayS = 0 }: SheetOptions,
): Promise<SheetVerdict> {
  const read = await readSigned(jws, SHEET_TYPE, keys);
  if (typeof read === "string") return { isValid: false, reasons: [read] };
  if (!isSheet(read)) return { isValid: false, reasons: ["not-a-sheet"] };
  const now = at.getTime() / SECOND_MS;
  const leeway = clockLeewayS >= 0 && clockLeewayS <= LONGEST_LEEWAY_S ? clockLeewayS : 0;
  const reasons: SheetFault[] = [
    // Asked this way round, so that a moment which is none is in no sheet's time.
    ...(!(read.nbf <= now + leeway) ? (["not-yet"] as const) : []),
    ...(!(read.exp > now - leeway) ? (["expired"] as const) : []),
    ...(await statusFaults(read.status.status_list.idx, status, keys, now - leeway)),
    ...expectationFaults(read.setting, expected),
  ];
  return reasons.length === 0
    ? { isValid: true, sheet: read, reasons: [] }
    : { isValid: false, sheet: read, reasons };
}

function expectationFaults(
  { personIds, bit, router, mark, woods, mounting }: ApprovedSheet["setting"],
  expected: ExpectedUse | undefined,
): ExpectationFault[] {
  if (expected === undefined) return ["expected-missing"];
  const { personId = "" } = expected;
  const checked: [boolean, ExpectationFault][] = [
    [personIds === undefined || personIds.includes(personId), "other-person"],
    [bit.id === expected.bitId, "other-bit"],
    [router.id === expected.routerId, "other-router"],
    [mark === expected.mark, "other-mark"],
    [woods.some(({ id }) => id === expected.woodId), "other-wood"],
    [mounting === expected.mounting, "other-mounting"],
  ];
  return checked.flatMap(([isSame, fault]) => (isSame ? [] : [fault]));
}

/** Whether a statement has all that is decided by; the service's signature vouches for the rest. */
function isSheet(value: unknown): value is ApprovedSheet {
  const { jti, iat, nbf, exp, status, setting } = Object(value);
  const { idx, uri } = Object(Object(status).status_list);
  const { bit, router, mounting, mark, woods, personIds } = Object(setting);
  const hasPlace = Number.isSafeInteger(idx) && idx >= 0 && typeof uri === "string";
  const hasTimes = [iat, nbf, exp].every(Number.isFinite);
  const names = [jti, Object(bit).id, Object(router).id, mounting];
  const isMark = mark === null || ["string", "number"].includes(typeof mark);
  const hasLists = Array.isArray(woods) && (personIds === undefined || Array.isArray(personIds));
  return names.every((name) => typeof name === "string") && hasTimes && hasPlace && isMark && hasLists;
}
