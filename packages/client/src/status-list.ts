import { bytesOf } from "./base64url.ts";
import type { JsonWebKeySet } from "./generated/models.ts";
import { readSigned } from "./signed-statement.ts";

/** Why the list does not speak for a sheet. */
export type StatusFault =
  | "status-missing"
  | "status-not-signed"
  | "status-out-of-date"
  | "ended"
  | "cannot-verify-here";

type StatusList = { readonly exp: number; readonly status_list: { readonly bits: 1; readonly lst: string } };

const STATUS_TYPE = "statuslist+jwt";

/**
 * What the signed list of settings that ended early (draft-ietf-oauth-status-list) says against the sheet at this place of it;
 * `nowS` is in seconds since 1970. Throws nothing.
 */
export async function statusFaults(
  index: number,
  status: string | undefined,
  keys: JsonWebKeySet,
  nowS: number,
): Promise<StatusFault[]> {
  if (status === undefined) return ["status-missing"];
  const list = await readSigned(status, STATUS_TYPE, keys);
  if (list === "cannot-verify-here") return [list];
  if (typeof list === "string" || !isStatus(list)) return ["status-not-signed"];
  if (!("DecompressionStream" in globalThis)) return ["cannot-verify-here"];
  const bits = await unpacked(list.status_list.lst);
  if (bits === undefined) return ["status-not-signed"];
  const byte = bits[Math.floor(index / 8)];
  // A list that ends before the sheet's place is older than the sheet.
  if (byte === undefined) return ["status-out-of-date"];
  if (((byte >>> (index % 8)) & 1) === 1) return ["ended"];
  return list.exp > nowS ? [] : ["status-out-of-date"];
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
