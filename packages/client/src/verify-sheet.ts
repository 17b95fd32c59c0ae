import type { JsonWebKeySet } from "./generated/types.gen.ts";

/** What a sheet states. Times are in seconds since 1970, as in RFC 7519. */
export type Sheet = {
  /** Id of the setting. */
  readonly jti: string;
  readonly iat: number;
  readonly nbf: number;
  readonly exp: number;
  /** Its place in the status list, and where that is read (draft-ietf-oauth-status-list). */
  readonly status: { readonly status_list: { readonly idx: number; readonly uri: string } };
  readonly setting: Readonly<Record<string, unknown>>;
};

type StatusList = { readonly exp: number; readonly status_list: { readonly bits: 1; readonly lst: string } };

export type SheetVerdict =
  | { readonly isValid: true; readonly sheet: Sheet; readonly reasons: readonly [] }
  | { readonly isValid: false; readonly sheet?: Sheet; readonly reasons: readonly SheetFault[] };

export type SheetFault =
  | "not-a-sheet"
  | "key-unknown"
  | "key-compromised"
  | "key-retired"
  | "signature-wrong"
  | "not-yet"
  | "expired"
  | "status-missing"
  | "status-not-signed"
  | "status-out-of-date"
  | "ended";

export type SheetOptions = {
  /** The service's public keys, as `client.signing.getJsonWebKeySet()` gives them; keep a copy to work offline. */
  readonly keys: JsonWebKeySet;
  /** The signed list of `client.approvals.getApprovalStatus()`. Without it a sheet is not believed. */
  readonly status?: string;
  /** Default: now. */
  readonly at?: Date;
};

const ISSUER = "rimwise";
const SHEET_TYPE = "rimwise-setting+jws";
const STATUS_TYPE = "statuslist+jwt";
const SECOND_MS = 1000;

/**
 * Checks a signed sheet without asking the service: its signature (Ed25519, RFC 8037), its time, and that the signed list of
 * settings that ended early does not mark it. Whatever cannot be made sure of is a reason why not; nothing is thrown.
 */
export async function verifySheet(
  jws: string,
  { keys, status, at = new Date() }: SheetOptions,
): Promise<SheetVerdict> {
  const read = await readSigned(jws, SHEET_TYPE, keys);
  if (typeof read === "string") return { isValid: false, reasons: [read] };
  if (!isSheet(read)) return { isValid: false, reasons: ["not-a-sheet"] };
  const now = at.getTime() / SECOND_MS;
  const reasons: SheetFault[] = [
    // Asked this way round, so that a moment which is none is in no sheet's time.
    ...(!(read.nbf <= now) ? (["not-yet"] as const) : []),
    ...(!(read.exp > now) ? (["expired"] as const) : []),
    ...(await statusFaults(read.status.status_list.idx, status, keys, now)),
  ];
  return reasons.length === 0
    ? { isValid: true, sheet: read, reasons: [] }
    : { isValid: false, sheet: read, reasons };
}

async function statusFaults(
  index: number,
  status: string | undefined,
  keys: JsonWebKeySet,
  now: number,
): Promise<SheetFault[]> {
  if (status === undefined) return ["status-missing"];
  const list = await readSigned(status, STATUS_TYPE, keys);
  if (typeof list === "string" || !isStatus(list)) return ["status-not-signed"];
  const bits = await unpacked(list.status_list.lst);
  if (bits === undefined) return ["status-not-signed"];
  const byte = bits[Math.floor(index / 8)];
  // A list that ends before the sheet's place is older than the sheet.
  if (byte === undefined) return ["status-out-of-date"];
  if (((byte >>> (index % 8)) & 1) === 1) return ["ended"];
  return list.exp > now ? [] : ["status-out-of-date"];
}

/** The payload of a compact JWS of this type by one of these keys, or what is wrong with it. */
async function readSigned(jws: string, type: string, { keys }: JsonWebKeySet): Promise<SheetFault | object> {
  const [head = "", payload = "", signature = "", ...rest] = jws.split(".");
  try {
    const { alg, typ, kid, crit } = Object(jsonOf(head));
    // What `crit` names must be understood (RFC 7515, section 4.1.11), and nothing is here.
    if (rest.length > 0 || alg !== "EdDSA" || typ !== type || crit !== undefined) return "not-a-sheet";
    const [key, ...others] = keys.filter((each) => each.kid === kid);
    if (key === undefined || others.length > 0) return "key-unknown";
    if (key.compromisedAt !== undefined) return "key-compromised";
    const publicKey = await crypto.subtle.importKey(
      "jwk",
      { kty: key.kty, crv: key.crv, x: key.x },
      { name: "Ed25519" },
      false,
      ["verify"],
    );
    const signed = new TextEncoder().encode(`${head}.${payload}`);
    const isSigned = await crypto.subtle.verify(
      { name: "Ed25519" },
      publicKey,
      signatureOf(signature),
      signed,
    );
    if (!isSigned) return "signature-wrong";
    const content: object = Object(jsonOf(payload));
    if (Reflect.get(content, "iss") !== ISSUER) return "not-a-sheet";
    return wasSignedInTime(content, key) ? content : "key-retired";
  } catch {
    return "not-a-sheet";
  }
}

/** Whether what is signed claims to be from before its key was retired. */
function wasSignedInTime(content: object, { retiredAt }: JsonWebKeySet["keys"][number]): boolean {
  const iat: unknown = Reflect.get(content, "iat");
  if (retiredAt === undefined) return true;
  return typeof iat === "number" && iat * SECOND_MS <= Date.parse(retiredAt);
}

function isSheet(value: unknown): value is Sheet {
  const { jti, iat, nbf, exp, status, setting } = Object(value);
  const { idx, uri } = Object(Object(status).status_list);
  const hasPlace = Number.isSafeInteger(idx) && idx >= 0 && typeof uri === "string";
  const hasTimes = [iat, nbf, exp].every(Number.isFinite);
  return typeof jti === "string" && hasTimes && hasPlace && Object(setting) === setting;
}

function isStatus(value: unknown): value is StatusList {
  const { exp, status_list } = Object(value);
  const { bits, lst } = Object(status_list);
  return Number.isFinite(exp) && bits === 1 && typeof lst === "string";
}

/** The bits of a list: DEFLATE in the ZLIB format (RFC 1950), in base64url. Undefined if it is something else. */
async function unpacked(list: string): Promise<Uint8Array | undefined> {
  try {
    const bytes = new Blob([bytesOf(list)]).stream().pipeThrough(new DecompressionStream("deflate"));
    return new Uint8Array(await new Response(bytes).arrayBuffer());
  } catch {
    return undefined;
  }
}

/** What a part says, written in one way only: with no member twice and nothing between. Throws for anything else. */
function jsonOf(part: string): unknown {
  const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytesOf(part));
  const value: unknown = JSON.parse(text);
  if (JSON.stringify(value) !== text) throw new SyntaxError("another way to write the same");
  return value;
}

/** The bytes of a signature; none, which verify nothing, when it is not written as signatures are. */
function signatureOf(part: string): Uint8Array<ArrayBuffer> {
  try {
    return bytesOf(part);
  } catch {
    return new Uint8Array();
  }
}

function bytesOf(part: string): Uint8Array<ArrayBuffer> {
  if (!/^[A-Za-z0-9_-]+$/.test(part)) throw new SyntaxError("not base64url without padding");
  const binary = atob(part.replaceAll("-", "+").replaceAll("_", "/"));
  const again = btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
  // The bits beyond the last byte must be zero (RFC 4648, section 3.5): each text has one encoding.
  if (again !== part) throw new SyntaxError("another way to write the same");
  return Uint8Array.from(binary, (character) => character.charCodeAt(0));
}
