import { edgeLife, type Policy, sharpeningsLeft, woodById } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import type { BitRecord } from "../bits/schema.ts";
import type { UseRecord } from "../uses/schema.ts";
import type { SharpeningRecord } from "./schema.ts";

export const EdgeSchema = Type.Object(
  {
    bitId: Type.String({ description: "The bit." }),
    usedEquivalentM: Type.Number({
      description: "Cut since the last sharpening, as metres of solid wood of middling density.",
    }),
    expectedM: Type.Number({ description: "What an edge of this bit is taken to last, in the same metres." }),
    usedPercent: Type.Number({ description: "How much of it is used." }),
    basis: Type.Enum(["own-history", "estimate"], {
      type: "string",
      description:
        "What the expectation rests on: this bit's own earlier edges, or a figure by tooth material.",
    }),
    isDue: Type.Boolean({ description: "Whether it should be sharpened." }),
    sharpeningsLeft: Type.Union([Type.Integer({ minimum: 0 }), Type.Null()], {
      description: "How many until the smallest usable diameter; null if none is recorded.",
    }),
    advice: Type.String({ description: "What no figure can say." }),
  },
  { $id: "EdgeLife", description: "What is left of a bit's edge: an estimate.", additionalProperties: false },
);

export type Edge = Static<typeof EdgeSchema>;

const ADVICE =
  "An estimate. An edge that burns, pulls, or leaves a rough face is dull whatever this says; one that is chipped goes to inspection.";

/** What is left of a bit's edge, from what it cut since its last sharpening and how long its edges lasted before. */
export function edgeOf(
  bit: BitRecord,
  uses: readonly UseRecord[],
  sharpenings: readonly SharpeningRecord[],
  policy: Policy,
): Edge {
  const since = uses.filter(({ doneAt }) => doneAt > (bit.sharpenedAt ?? ""));
  const { usedEquivalentM, expectedM, usedRatio, basis, dueForSharpening } = edgeLife(
    {
      toothMaterial: bit.toothMaterial ?? "unknown",
      uses: since.flatMap(({ woodId, metres }) => {
        const wood = woodById(woodId);
        return wood === undefined ? [] : [{ wood, metres }];
      }),
      pastLives: sharpenings.map(({ lifeEquivalentM }) => lifeEquivalentM),
    },
    policy,
  );
  return {
    bitId: bit.id,
    usedEquivalentM: Math.ceil(usedEquivalentM * 10) / 10,
    expectedM: Math.floor(expectedM),
    usedPercent: Math.ceil(usedRatio * 1000) / 10,
    basis,
    isDue: dueForSharpening,
    sharpeningsLeft: leftOf(bit, sharpenings, policy),
    advice: ADVICE,
  };
}

function leftOf(
  { form, smallestUsableDiameterMm }: BitRecord,
  past: readonly SharpeningRecord[],
  policy: Policy,
): number | null {
  if (smallestUsableDiameterMm === undefined || !("diameterMm" in form)) return null;
  const losses = past.flatMap(({ before, after }) =>
    "diameterMm" in before.form && "diameterMm" in after.form
      ? [{ beforeMm: before.form.diameterMm, afterMm: after.form.diameterMm }]
      : [],
  );
  const asked = { diameterMm: form.diameterMm, smallestDiameterMm: smallestUsableDiameterMm, past: losses };
  return sharpeningsLeft(asked, policy).left;
}
