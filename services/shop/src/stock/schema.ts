import Type from "typebox";
import { REORDER_REASONS } from "../bits/query-columns.ts";
import { BitSchema } from "../bits/schema.ts";
import { momentField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { Severity } from "../plans/codes.ts";

const closed = { additionalProperties: false } as const;

const DueBitSchema = Type.Object(
  {
    bit: ref(BitSchema),
    dueAt: momentField("Since when an inspection is due."),
    reason: Type.String({ description: "By its days, or by the metres it has cut." }),
  },
  { $id: "DueBit", description: "A bit to be inspected.", ...closed },
);

const HeldStockSchema = Type.Object(
  {
    bit: ref(BitSchema),
    since: momentField("Since when it is held."),
    reason: Type.String({ description: "Why." }),
    by: Type.Union([Type.String(), Type.Null()], {
      description: "Who held it: a person, or the key of a program; null if nobody did by hand.",
    }),
    name: Type.Union([Type.String(), Type.Null()], { description: "Their name; null for a program." }),
    isByStaff: Type.Boolean({
      description: "Whether they are in charge. What others held waits for somebody in charge to look.",
    }),
  },
  { $id: "HeldStock", description: "A bit that is held, and who held it.", ...closed },
);

const UsedBitSchema = Type.Object(
  {
    bit: ref(BitSchema),
    minutes: Type.Number({ description: "Minutes run in all." }),
    metres: Type.Number({ description: "Metres cut in all." }),
  },
  { $id: "UsedBit", description: "A bit and how much it is used.", ...closed },
);

const ReorderBitSchema = Type.Object(
  {
    bit: ref(BitSchema),
    reason: Type.Enum([...REORDER_REASONS], {
      type: "string",
      description: "It is retired and nothing has taken its place, or no sharpening is left in it.",
    }),
  },
  { $id: "ReorderBit", description: "A bit to buy again.", ...closed },
);

const SetFindingSchema = Type.Object(
  {
    bitIds: Type.Array(Type.String(), { description: "The two bits it is about." }),
    severity: ref(Severity.schema),
    text: Type.String({ description: "What was found when their halves were laid on each other." }),
  },
  {
    $id: "BitSetFinding",
    description: "How two bits of a set fit each other as they measure now.",
    ...closed,
  },
);

export const BitSetSchema = Type.Object(
  {
    setName: Type.String({ description: "Its name, which its bits have in common." }),
    bits: Type.Array(ref(BitSchema), { description: "Its bits, at most 50." }),
    isSharpenedApart: Type.Boolean({
      description:
        "Whether two of them no longer make one joint: have them sharpened to match, or replace one.",
    }),
    findings: Type.Array(ref(SetFindingSchema), { description: "How those that are a pair fit each other." }),
  },
  { $id: "BitSet", description: "Bits that belong together.", ...closed },
);

export const DuePageSchema = pageSchema(
  "DuePage",
  ref(DueBitSchema),
  "Bits to be inspected, the longest due first.",
);
export const HeldPageSchema = pageSchema(
  "HeldPage",
  ref(HeldStockSchema),
  "Held bits, in the order in which they were entered.",
);
export const UsedPageSchema = pageSchema("UsedPage", ref(UsedBitSchema), "Bits by minutes run, most first.");
export const BitSetPageSchema = pageSchema("BitSetPage", ref(BitSetSchema), "Sets of bits, by name.");
export const ReorderPageSchema = pageSchema(
  "ReorderPage",
  ref(ReorderBitSchema),
  "Bits to reorder, oldest first.",
);

/** The components this resource answers. */
export const STOCK_SCHEMAS = [
  DueBitSchema,
  HeldStockSchema,
  UsedBitSchema,
  ReorderBitSchema,
  DuePageSchema,
  HeldPageSchema,
  UsedPageSchema,
  ReorderPageSchema,
  SetFindingSchema,
  BitSetSchema,
  BitSetPageSchema,
];
