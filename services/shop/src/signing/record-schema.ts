import Type, { type Static } from "typebox";
import { keptFields } from "../http/fields.ts";

const moment = (description: string) => Type.Optional(Type.String({ format: "date-time", description }));

/** A signing key as the database keeps it: the members of an OKP key (RFC 8037) beside its times. */
export const SigningKeyRecordSchema = Type.Object({
  id: Type.String({ description: "Its id." }),
  kid: Type.String({ description: "Its thumbprint (RFC 7638)." }),
  x: Type.String({ description: "The public key, in base64url." }),
  /** The private half, of a retired key nothing, under the sealing key. It covers every other field: see `sealing.ts`. */
  seal: Type.String(),
  retiredAt: moment("Since when it signs no more."),
  compromisedAt: moment("Since when nothing that it signed counts."),
  lostAt: moment(
    "Since when the shop does without it: nobody has the key that it was sealed with, so nobody can say that it was the shop's.",
  ),
  ...keptFields,
});

export type SigningKeyRecord = Static<typeof SigningKeyRecordSchema>;
