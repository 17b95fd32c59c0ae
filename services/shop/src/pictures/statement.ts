import { createHash } from "node:crypto";
import type { PictureKind } from "@rimwise/drawing";
import type { ApprovalRecord } from "../approvals/record-schema.ts";
import { secondsOf } from "../http/moment.ts";
import type { Signer } from "../signing/signer.ts";

/** The kind of statement, as the `typ` of its header. */
const PICTURE_TYPE = "rimwise-picture+jws";

/** Where the statement stands in a picture: before its end. */
const END = "</svg>";

/** What a signed picture is of. */
export type PictureOf = {
  readonly approval: ApprovalRecord;
  readonly kind: PictureKind;
  readonly units: "metric" | "imperial";
};

/**
 * A picture of an approved setting with a signed statement in its `<metadata>` (a compact JWS, RFC 7515): which setting it shows, of which
 * result, until when, and the SHA-256 of the picture without the statement. Whoever changes a line of it, or takes another's statement,
 * is found out.
 */
export async function withStatement(svg: string, of: PictureOf, sign: Signer["sign"]): Promise<string> {
  const jws = await sign(statementOf(svg, of), PICTURE_TYPE);
  const end = svg.lastIndexOf(END);
  return `${svg.slice(0, end)}<metadata>${jws}</metadata>${svg.slice(end)}`;
}

function statementOf(svg: string, { approval, kind, units }: PictureOf) {
  const { id, resultDigest, issuedAt, updatedAt, validFrom, validUntil } = approval;
  return {
    iss: "rimwise",
    sub: id,
    iat: secondsOf(issuedAt ?? updatedAt),
    nbf: secondsOf(validFrom),
    exp: secondsOf(validUntil),
    picture: { kind, units, resultDigest, sha256: createHash("sha256").update(svg).digest("hex") },
  };
}
