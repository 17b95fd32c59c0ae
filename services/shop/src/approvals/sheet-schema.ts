import Type, { type Static } from "typebox";
import { ref } from "../http/reference.ts";
import { PlanPassSchema } from "../plans/pass-schema.ts";
import { ApprovalSchema } from "./schema.ts";
import { SettingSchema } from "./setting-schema.ts";

const closed = { additionalProperties: false } as const;

const { number, kind, heightMm, cutterMm, fenceMm, feedMPerMin, secondsPerEdge } = PlanPassSchema.properties;
const { mark, rpm, ceilingRpm, bindingLimit, verdict } = SettingSchema.properties;
const { name, courseId, mounting, supervision, skill, personIds, resultDigest, inputDigest, engineVersion } =
  ApprovalSchema.properties;

const seconds = (description: string) =>
  Type.Integer({ description: `${description} In seconds since 1970 (RFC 7519).` });

const SheetWood = Type.Object(
  {
    id: Type.String({ description: "The wood." }),
    name: Type.String({ description: "Its name." }),
    passes: Type.Array(
      Type.Object({ number, kind, heightMm, cutterMm, fenceMm, feedMPerMin, secondsPerEdge }, closed),
      { description: "Passes in order." },
    ),
    steps: Type.Array(Type.String(), { description: "The order of work, in sentences." }),
  },
  closed,
);

const sentences = (description: string) => Type.Array(Type.String(), { description });

const SheetSetting = Type.Object(
  {
    name,
    courseId,
    bit: Type.Object(
      {
        id: Type.String({ description: "The bit." }),
        name: Type.String({ description: "Its name." }),
        kind: Type.String({ description: "Its form." }),
        shankDiameterMm: Type.Number({ description: "Its shank." }),
        markedMaxRpm: Type.Optional(Type.Number({ description: "What is marked on it." })),
        diameterMm: Type.Optional(Type.Number({ description: "Its diameter." })),
      },
      { description: "The bit, and no other.", ...closed },
    ),
    router: Type.Object(
      { id: Type.String({ description: "The router." }), name: Type.String({ description: "Its name." }) },
      { description: "The router, and no other.", ...closed },
    ),
    mounting,
    verdict,
    mark,
    rpm,
    rpmHighest: Type.Union([Type.Integer(), Type.Null()], {
      description: "The fastest it may actually be there.",
    }),
    ceilingRpm,
    bindingLimit,
    woods: Type.Array(SheetWood, { description: "The woods it is for, each with its passes." }),
    findings: sentences("What weighs on the verdict."),
    precautions: sentences("What a careful teacher would say at the machine."),
    advice: Type.String({ description: "What comes before this sheet." }),
    supervision,
    skill,
    personIds,
    resultDigest,
    inputDigest,
    engineVersion,
  },
  { description: "All that a person needs at the machine.", ...closed },
);

/** What a sheet states: who signed, until when, and all that a person needs at the machine. */
export const ApprovedSheetSchema = Type.Object(
  {
    iss: Type.String({ const: "rimwise", description: "Who signed it." }),
    jti: Type.String({ description: "Id of the approval." }),
    iat: seconds("When it was issued."),
    nbf: seconds("Not to be relied on before."),
    exp: seconds("Not to be relied on from then on."),
    status: Type.Object(
      {
        status_list: Type.Object(
          {
            idx: Type.Integer({ minimum: 0, description: "Its place in the list." }),
            uri: Type.String({ description: "Where the list is read." }),
          },
          closed,
        ),
      },
      {
        description:
          "Its place in the signed list of settings that ended early (draft-ietf-oauth-status-list).",
        ...closed,
      },
    ),
    setting: SheetSetting,
  },
  {
    $id: "ApprovedSheet",
    description:
      "What the JWS of a sheet states. It is believed for a use whose person, bit, router, mark, wood and mounting are its own, in its time, while the signed list does not mark it.",
    ...closed,
  },
);

export const SignedSheetSchema = Type.Object(
  {
    approvalId: Type.String({ description: "The setting." }),
    jws: Type.String({
      description:
        "The sheet as a compact JWS (RFC 7515), `typ` rimwise-setting+jws; it states an ApprovedSheet.",
      contentMediaType: "application/jose",
      contentSchema: ref(ApprovedSheetSchema),
    }),
    validUntil: Type.String({ format: "date-time", description: "When it expires." }),
  },
  {
    $id: "SignedSheet",
    description: "A setting signed, with all that a person needs at the machine.",
    ...closed,
  },
);

export type ApprovedSheet = Static<typeof ApprovedSheetSchema>;
