import Type, { type Static } from "typebox";
import { keptFields } from "../http/fields.ts";

const moment = () => Type.Optional(Type.String({ format: "date-time" }));

/** A signing key as the database keeps it: the members of an OKP key (RFC 8037) beside its times. */
export const SigningKeyRecordSchema = Type.Object({
  id: Type.String(),
  /** Its thumbprint (RFC 7638). */
  kid: Type.String(),
  /** The public key, in base64url. */
  x: Type.String(),
  /** The private half, of a retired key nothing, under the sealing key. It covers every other field: see `sealing.ts`. */
  seal: Type.String(),
  retiredAt: moment(),
  /** Since when nothing that it signed counts. */
  compromisedAt: moment(),
  /** Since when the shop does without it: nobody has the key that it was sealed with, so nobody can say that it was the shop's. */
  lostAt: moment(),
  ...keptFields,
});

export type SigningKeyRecord = Static<typeof SigningKeyRecordSchema>;
