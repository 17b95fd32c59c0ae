import Type, { type Static } from "typebox";
import { hashField } from "../events/head-schema.ts";

/** What can be wrong with a history, each with what it means. */
export const BREAKS = {
  "event-missing": "there is no event of this sequence, although others say that there was",
  "event-changed": "the event is not what its own hash was computed from",
  "chain-broken": "the event does not follow on the one before it",
  "time-changed": "the event would not be found by its time",
  "record-changed": "the record is not what this event, the last about it, left",
  "record-missing": "the record is gone, and no event says that it was removed",
  "record-planted": "there is a record of which the history does not tell",
  "checkpoint-missing": "this event made a checkpoint, and it is not there",
  "checkpoint-changed": "a checkpoint about this event is not what was signed",
  "checkpoint-not-signed": "a checkpoint about this event is not signed by this service",
  "checkpoint-key-unknown": "a checkpoint about this event is signed by a key that is not in the key file",
  "head-differs": "the event has another hash than the one that was given",
  "checkpoint-differs": "a checkpoint states another hash for this event",
} as const;

export type BreakReason = keyof typeof BREAKS;

/** Enough for months of a busy shop, and far under the time an answer may take. */
export const MOST_CHECKED = 50_000;

export const ProofRequestSchema = Type.Object(
  {
    fromSequence: Type.Optional(
      Type.Integer({
        minimum: 1,
        maximum: Number.MAX_SAFE_INTEGER,
        description: "Sequence of the first event to check; 1 unless given.",
      }),
    ),
    head: Type.Optional(
      Type.Object(
        {
          sequence: Type.Integer({
            minimum: 1,
            maximum: Number.MAX_SAFE_INTEGER,
            description: "Its sequence.",
          }),
          hash: hashField("Its hash."),
        },
        {
          description:
            "An event that was once the latest, kept elsewhere: of a backup's manifest or a checkpoint. A history that does not reach it, or has another one in its place, is not intact.",
          additionalProperties: false,
        },
      ),
    ),
  },
  { $id: "HistoryCheck", description: "What to check.", additionalProperties: false },
);

const BrokenSchema = Type.Object(
  {
    sequence: Type.Integer({ minimum: 1, description: "Sequence of the event in question." }),
    reason: Type.Enum(Object.keys(BREAKS), {
      type: "string",
      description: `What is wrong: ${Object.entries(BREAKS)
        .map(([reason, meaning]) => `\`${reason}\`, ${meaning}`)
        .join("; ")}.`,
    }),
  },
  { description: "The first thing that is wrong; absent if nothing is.", additionalProperties: false },
);

export const ProofSchema = Type.Object(
  {
    isIntact: Type.Boolean({
      description:
        "Whether nothing is wrong with the events that were checked, and with the records that they were the last about.",
    }),
    checked: Type.Integer({ minimum: 0, description: "Events checked." }),
    firstSequence: Type.Integer({ minimum: 1, description: "Sequence the check began at." }),
    lastSequence: Type.Integer({
      minimum: 0,
      description: "Sequence of the last event that was found good.",
    }),
    nextSequence: Type.Union([Type.Integer({ minimum: 1 }), Type.Null()], {
      description: `Send it as \`fromSequence\` to go on: at most ${MOST_CHECKED} events are checked at a time. Null at the end, and if something is wrong.`,
    }),
    checkpoints: Type.Integer({ minimum: 0, description: "Checkpoints found good." }),
    broken: Type.Optional(BrokenSchema),
  },
  {
    $id: "HistoryProof",
    description: "What a check of the history found. It ends at the first thing that is wrong.",
    additionalProperties: false,
  },
);

export type Proof = Static<typeof ProofSchema>;
export type HistoryCheck = Static<typeof ProofRequestSchema>;
/** An event that was once the latest. */
export type Head = NonNullable<HistoryCheck["head"]>;
