import Type, { type Static } from "typebox";
import { orNull } from "../http/fields.ts";
import { ref } from "../http/reference.ts";
import { PlanAnswerSchema } from "../plans/answer-schema.ts";
import { PANEL_CODES, PanelAssumptionCode, PanelFindingCode, PanelVerdict } from "./codes.ts";

const closed = { additionalProperties: false } as const;
const text = Type.String({ description: "The sentence for people." });

const Finding = Type.Object(
  {
    code: ref(PanelFindingCode.schema),
    severity: Type.Enum(["refuse", "care"], { type: "string", description: "What it does to the verdict." }),
    text,
  },
  { $id: "PanelFinding", description: "Something that weighs on whether a panel fits.", ...closed },
);

const Assumption = Type.Object(
  { code: ref(PanelAssumptionCode.schema), text },
  { $id: "PanelAssumption", description: "Something that was taken for granted.", ...closed },
);

const SideState = Type.Object(
  {
    sizeMm: Type.Number({ description: "Its size then." }),
    gapMm: Type.Number({ description: "Left at the bottom of the groove, on each side." }),
    engagementMm: Type.Number({ description: "How far it reaches into the groove, on each side." }),
    revealMm: orNull(
      Type.Number(),
      "From the frame's inside edge to the raised field; null for a flat panel.",
    ),
  },
  { $id: "PanelSideState", description: "One side of a panel at one time of the year.", ...closed },
);

const Dimension = Type.Object(
  {
    openingMm: Type.Number({ description: "The opening's." }),
    cutMm: Type.Number({ description: "Size to cut now, or the size it was cut to." }),
    moves: Type.Enum(["across-grain", "along-grain"], {
      type: "string",
      description: "Across the grain wood moves much, along it hardly.",
    }),
    now: ref(SideState),
    driest: ref(SideState),
    wettest: ref(SideState),
    gapLeastMm: Type.Number({
      description: "Least gap through the year, with all that is uncertain at its worst.",
    }),
    engagementLeastMm: Type.Number({ description: "Least engagement through the year, likewise." }),
    grooveDepthNeededMm: Type.Number({
      description: "The shallowest groove in which such a panel keeps its clearance and its cover.",
    }),
    display: Type.Optional(
      Type.Object(
        {
          cut: Type.String(),
          gapNow: Type.String(),
          gapDriest: Type.String(),
          gapWettest: Type.String(),
        },
        { description: "As a person would read it; present if `units` was given.", ...closed },
      ),
    ),
  },
  { $id: "PanelDimension", description: "Width or height of a panel through the year.", ...closed },
);

const Tongue = Type.Object(
  {
    shape: Type.Enum(["flat", "raised"], { type: "string", description: "Whether a bit raises it." }),
    fit: Type.Enum(["fits", "rattles", "too-thick", "wedges", "cut-away"], {
      type: "string",
      description:
        "How it sits in the groove: too-thick does not go in; wedges goes in, but not as deep as it must; cut-away leaves nothing.",
    }),
    thicknessMm: Type.Number({ description: "As it is cut, at the groove's mouth when it is deepest in." }),
    lengthMm: Type.Number({
      description: "From the panel's edge to where it gets as thick as the groove takes, or to the field.",
    }),
    playLeastMm: Type.Number({ description: "Play in the groove when it is deepest in and thickest." }),
    playMostMm: Type.Number({ description: "Play when it is least in and thinnest." }),
  },
  { $id: "PanelTongue", description: "The panel's edge against the groove.", ...closed },
);

const SizedPanel = Type.Object(
  {
    name: orNull(Type.String(), "The opening's name."),
    count: Type.Integer({ description: "Panels like this one." }),
    verdict: ref(PanelVerdict.schema),
    findings: Type.Array(ref(Finding), { description: "What the verdict rests on." }),
    width: ref(Dimension),
    height: ref(Dimension),
    tongue: ref(Tongue),
  },
  { $id: "SizedPanel", description: "A panel for one opening.", ...closed },
);

const PanelEdge = Type.Object(
  {
    number: Type.Integer({ description: "Its number in the steps of the plan." }),
    lengthMm: Type.Number({ description: "Length of each." }),
    grain: Type.Enum(["end", "long"], {
      type: "string",
      description: "Across the grain's end, or along it.",
    }),
    count: Type.Integer({ description: "Edges of this length and grain, over all the panels." }),
  },
  { $id: "PanelEdge", description: "Edges of one length and grain.", ...closed },
);

const Time = Type.Object(
  {
    setUps: Type.Integer({ description: "Times a height or a fence is set." }),
    cuttingSeconds: Type.Number({ description: "Every pass along every edge." }),
    settingUpSeconds: Type.Number({ description: "All the settings, at the policy's time for one." }),
    totalSeconds: Type.Number({ description: "Both; walking and turning the work is not in it." }),
  },
  { $id: "PanelTime", description: "How long the edges take.", ...closed },
);

const Work = Type.Object(
  {
    plan: ref(PlanAnswerSchema),
    time: orNull(ref(Time), "How long it takes; null when the plan's verdict is do-not-run."),
  },
  { $id: "PanelWork", description: "The plan of the edges of every panel that fits.", ...closed },
);

export const PanelsAnswerSchema = Type.Object(
  {
    panels: Type.Array(ref(SizedPanel), { description: "One for each opening, in the request's order." }),
    moisture: Type.Object(
      {
        nowPercent: Type.Number({ description: "As it was said." }),
        driestPercent: Type.Number({ description: "What the wood settles at in the driest air." }),
        wettestPercent: Type.Number({ description: "What it settles at in the wettest air." }),
      },
      { description: "Moisture contents; the year's to 0.5 %, which is all they mean.", ...closed },
    ),
    raising: orNull(
      Type.Object(
        {
          heightMm: Type.Number({ description: "How far the bit stands out at the end." }),
          fenceMm: Type.Number({ description: "How far its axis stands behind the fence." }),
        },
        closed,
      ),
      "The bit's setting the tongues come from; null for flat panels.",
    ),
    edges: Type.Array(ref(PanelEdge), { description: "The edges of the panels that fit, end grain first." }),
    totals: Type.Object(
      {
        panels: Type.Integer({ description: "Panels." }),
        areaM2: Type.Number({ description: "Faces of all of them, as they are cut." }),
        edgeLengthM: Type.Number({ description: "Length of all their edges." }),
      },
      { description: "Of all the panels, whether they fit or not.", ...closed },
    ),
    findings: Type.Array(ref(Finding), { description: "What weighs on all the panels alike." }),
    assumptions: Type.Array(ref(Assumption), {
      description: "What was taken for granted, and on which side.",
    }),
    work: orNull(ref(Work), "The plan of the edges; null if no bit was named, or no panel fits."),
    wood: Type.Object(
      { id: Type.String({ description: "Its id." }), name: Type.String({ description: "Its name." }) },
      { description: "What the panels are made of.", ...closed },
    ),
    advice: Type.String({ description: "What comes before this sizing." }),
  },
  { $id: "PanelSizing", description: "Panels for openings, with the work on their edges.", ...closed },
);

export const ANSWER_SCHEMAS = [
  ...PANEL_CODES.map(({ schema }) => schema),
  Finding,
  Assumption,
  SideState,
  Dimension,
  Tongue,
  SizedPanel,
  PanelEdge,
  Time,
  Work,
  PanelsAnswerSchema,
];

export type PanelsAnswer = Static<typeof PanelsAnswerSchema>;
