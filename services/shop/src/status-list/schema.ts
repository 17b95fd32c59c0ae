import Type from "typebox";

/** The kind of statement, as the `typ` of its header: that of the Token Status List draft (draft-ietf-oauth-status-list). */
export const STATUS_TYPE = "statuslist+jwt";

/** Below the service's public address. */
export const STATUS_PATH = "/v1/approvals/status";

export const SignedStatusSchema = Type.Object(
  {
    jws: Type.String({
      description:
        "The list as a compact JWS, `typ` statuslist+jwt, after draft-ietf-oauth-status-list: one bit for each setting, at the `idx` that its sheet names, which is 1 if it ended before its time.",
    }),
  },
  {
    $id: "SignedStatus",
    description: "Which sheets must no longer be believed.",
    additionalProperties: false,
  },
);
