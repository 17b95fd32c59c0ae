import { bytesOf } from "./base64url.ts";
import type { JsonWebKey, JsonWebKeySet } from "./generated/models.ts";
import { isSigned } from "./signature.ts";

/** Why a statement is not believed. */
export type StatementFault =
  | "not-a-sheet"
  | "key-unknown"
  | "key-compromised"
  | "key-retired"
  | "signature-wrong"
  | "cannot-verify-here";

const ISSUER = "rimwise";
const SECOND_MS = 1000;

/** The payload of a compact JWS (RFC 7515) of this type by one of these keys, or what is wrong with it. Throws nothing. */
export async function readSigned(
  jws: string,
  type: string,
  { keys }: JsonWebKeySet,
): Promise<StatementFault | object> {
  try {
    const [head = "", payload = "", signature = "", ...rest] = jws.split(".");
    const { alg, typ, kid, crit } = Object(jsonOf(head));
    // What `crit` names must be understood (RFC 7515, section 4.1.11), and nothing is here.
    if (rest.length > 0 || alg !== "EdDSA" || typ !== type || crit !== undefined) return "not-a-sheet";
    const [key, ...others] = keys.filter((each) => each.kid === kid);
    if (key === undefined || others.length > 0) return "key-unknown";
    if (key.compromisedAt !== undefined) return "key-compromised";
    const isGood = await isSigned(
      key,
      signatureOf(signature),
      new TextEncoder().encode(`${head}.${payload}`),
    );
    if (isGood === undefined) return "cannot-verify-here";
    if (!isGood) return "signature-wrong";
    const content: object = Object(jsonOf(payload));
    if (Reflect.get(content, "iss") !== ISSUER) return "not-a-sheet";
    return wasSignedInTime(content, key) ? content : "key-retired";
  } catch {
    return "not-a-sheet";
  }
}

/** Whether what is signed claims to be from before its key was retired. */
function wasSignedInTime(content: object, { retiredAt }: JsonWebKey): boolean {
  const iat: unknown = Reflect.get(content, "iat");
  if (retiredAt === undefined) return true;
  return typeof iat === "number" && iat * SECOND_MS <= Date.parse(retiredAt);
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
