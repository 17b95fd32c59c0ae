import { cutSummary, PANEL_RANGES } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { BitInputSchema } from "../bits/schema.ts";
import { nameField } from "../http/fields.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";
import { RecordReferenceSchema, SpeedTrialSchema } from "../plans/schema.ts";
import { PolicyLayerSchema } from "../policy/layer-schema.ts";
import { RouterInputSchema } from "../routers/schema.ts";
import { ANSWER_SCHEMAS } from "./answer-schema.ts";

const closed = { additionalProperties: false } as const;

const OpeningSchema = Type.Object(
  {
    name: Type.Optional(nameField("Upper left door")),
    count: Type.Optional(
      Type.Integer({ ...within(PANEL_RANGES.count), description: "Frames like this one. Default: 1." }),
    ),
    widthMm: Type.Number({
      ...within(PANEL_RANGES.openingMm),
      description: "Between the inside edges of the stiles.",
    }),
    heightMm: Type.Number({
      ...within(PANEL_RANGES.openingMm),
      description: "Between the inside edges of the rails.",
    }),
    grainAlong: Type.Optional(
      Type.Enum(["height", "width"], {
        type: "string",
        description: "Which way the panel's grain runs. Default: along the height.",
      }),
    ),
    panel: Type.Optional(
      Type.Object(
        {
          widthMm: Type.Number({ ...within(PANEL_RANGES.panelMm), description: "Its width as it was cut." }),
          heightMm: Type.Number({
            ...within(PANEL_RANGES.panelMm),
            description: "Its height as it was cut.",
          }),
        },
        {
          description: "A panel that was cut already, to be judged. Default: the size is found.",
          ...closed,
        },
      ),
    ),
  },
  { $id: "PanelOpening", description: "What a frame leaves open, between its inside edges.", ...closed },
);

const GrooveSchema = Type.Object(
  {
    depthMm: Type.Number({
      ...within(PANEL_RANGES.grooveDepthMm),
      description: "From the frame's inside edge to the groove's bottom.",
    }),
    widthMm: Type.Number({ ...within(PANEL_RANGES.grooveWidthMm), description: "Width of the groove." }),
  },
  { $id: "PanelGroove", description: "The groove around the inside of the frames.", ...closed },
);

const AirSchema = Type.Object(
  {
    relativeHumidityPercent: Type.Number({
      ...within(PANEL_RANGES.relativeHumidityPercent),
      description: "Relative humidity.",
    }),
    temperatureC: Type.Number({ ...within(PANEL_RANGES.temperatureC), description: "Temperature." }),
  },
  { $id: "Air", description: "The air at one end of the year.", ...closed },
);

const ClimateSchema = Type.Object(
  { driest: ref(AirSchema), wettest: ref(AirSchema) },
  { $id: "Climate", description: "The driest and the wettest air the panels will live in.", ...closed },
);

const MoistureSchema = Type.Object(
  {
    percent: Type.Number({
      ...within(PANEL_RANGES.moisturePercent),
      description: "Moisture content of the wood when it is cut.",
    }),
    tolerancePercent: Type.Optional(
      Type.Number({
        ...within(PANEL_RANGES.moistureTolerancePercent),
        description: "How far off that may be. Default: what the policy assumes.",
      }),
    ),
  },
  { $id: "WoodMoisture", description: "Moisture content now.", ...closed },
);

export const PanelsRequestSchema = Type.Object(
  {
    openings: Type.Array(ref(OpeningSchema), {
      minItems: PANEL_RANGES.openings.min,
      maxItems: PANEL_RANGES.openings.max,
      description: "The openings to fill, in the order to report them.",
    }),
    groove: ref(GrooveSchema),
    thicknessMm: Type.Number({
      ...within(PANEL_RANGES.thicknessMm),
      description: "Thickness of the panels.",
    }),
    woodId: Type.String({
      minLength: 1,
      maxLength: 100,
      description: "Id of a wood, such as `black-cherry`.",
    }),
    sawn: Type.Optional(
      Type.Enum(["flat", "quarter"], {
        type: "string",
        description: "How the boards were sawn. Default: flat, which moves most.",
      }),
    ),
    moisture: ref(MoistureSchema),
    climate: ref(ClimateSchema),
    bit: Type.Optional(
      Type.Union([ref(RecordReferenceSchema), ref(BitInputSchema)], {
        description:
          "The bit that raises the edges, of the rack or described here. With it come router and mounting; without it the panels stay flat.",
      }),
    ),
    router: Type.Optional(
      Type.Union([ref(RecordReferenceSchema), ref(RouterInputSchema)], {
        description: "A router of the shop by its id, or one described here.",
      }),
    ),
    mounting: Type.Optional(
      Type.Enum(["table", "handheld"], { type: "string", description: "How the router is held." }),
    ),
    heightMm: Type.Optional(
      Type.Number({
        ...within(cutSummary("panel").fields.heightMm),
        description:
          "How far the bit stands out of the table or base at the end. Default: the height that leaves a tongue the groove takes.",
      }),
    ),
    fenceMm: Type.Optional(
      Type.Number({
        ...within(cutSummary("panel").fields.fenceMm),
        description: "How far its axis stands behind the fence. Default: the pilot's radius.",
      }),
    ),
    trials: Type.Optional(
      Type.Array(ref(SpeedTrialSchema), { maxItems: 200, description: "Speed trials of this bit." }),
    ),
    policy: Type.Optional(ref(PolicyLayerSchema)),
  },
  { $id: "PanelsRequest", description: "Openings that share wood, climate, groove and bit.", ...closed },
);

/** The components this resource answers and takes. */
export const PANEL_SCHEMAS = [
  OpeningSchema,
  GrooveSchema,
  AirSchema,
  ClimateSchema,
  MoistureSchema,
  PanelsRequestSchema,
  ...ANSWER_SCHEMAS,
];

export type PanelsRequest = Static<typeof PanelsRequestSchema>;
