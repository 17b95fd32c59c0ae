import { type Dial, type Mounting, ROUTER_RANGES } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import {
  externalIdField,
  idField,
  keptFields,
  momentField,
  nameField,
  notesField,
  type PatchOf,
  patchSchema,
} from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";

const MOST_COLLETS = 20;
const MOST_READINGS = 100;

export const MarkSchema = Type.Union(
  [
    Type.Number({ ...within(ROUTER_RANGES.mark) }),
    Type.String({
      pattern: "^[A-Za-z](\\.\\d{1,2})?$",
      description: "a letter, or a place after it such as B.5",
    }),
  ],
  { $id: "Mark", description: "A mark on the dial: a number or a letter; between two of them 2.5 or B.5." },
);

export const DialSchema = Type.Unsafe<Dial>(
  Type.Object(
    {
      marks: Type.Object(
        { first: ref(MarkSchema), last: ref(MarkSchema) },
        { description: "The slowest and the fastest mark, of one kind.", additionalProperties: false },
      ),
      steps: Type.Optional(
        Type.Integer({
          ...within(ROUTER_RANGES.steps),
          description:
            "Detents from one whole mark to the next: 1 clicks at whole marks, 2 at halves; 0 is stepless. Default: 1.",
        }),
      ),
      readings: Type.Optional(
        Type.Array(
          Type.Object(
            {
              mark: ref(MarkSchema),
              rpm: Type.Number({
                ...within(ROUTER_RANGES.rpm),
                description: "Speed read with a tachometer.",
              }),
              isConfirmed: Type.Optional(
                Type.Boolean({
                  description:
                    "Somebody stands by it although it does not fit the router's range or the other readings.",
                }),
              ),
            },
            { additionalProperties: false },
          ),
          {
            maxItems: MOST_READINGS,
            description:
              "Tachometer readings, in rising order of mark and speed. A second one of a mark backs the first.",
          },
        ),
      ),
    },
    { $id: "Dial", description: "The numbered or lettered speed dial.", additionalProperties: false },
  ),
);

const routerFields = {
  minRpm: Type.Number({ ...within(ROUTER_RANGES.rpm), description: "Slowest no-load speed on the plate." }),
  maxRpm: Type.Number({
    ...within(ROUTER_RANGES.rpm),
    description: "Fastest no-load speed on the plate; equal to minRpm on a single-speed router.",
  }),
  dial: Type.Optional(ref(DialSchema)),
  inputPowerW: Type.Optional(
    Type.Number({
      ...within(ROUTER_RANGES.inputPowerW),
      description: "Electrical input power on the plate.",
    }),
  ),
  colletDiametersMm: Type.Optional(
    Type.Unsafe<readonly number[]>(
      Type.Array(Type.Number({ ...within(ROUTER_RANGES.colletDiametersMm) }), {
        maxItems: MOST_COLLETS,
        description: "Shank diameters its collets take. Default: not known.",
      }),
    ),
  ),
};

const namedFields = {
  name: nameField("Table router"),
  externalId: Type.Optional(externalIdField),
  notes: Type.Optional(notesField),
  ...routerFields,
  mountings: Type.Optional(
    Type.Unsafe<readonly Mounting[]>(
      Type.Array(Type.Enum(["table", "handheld"], { type: "string" }), {
        minItems: 1,
        maxItems: 2,
        uniqueItems: true,
        description: "How it can be used: one that is fixed under a table cannot be held. Default: both.",
      }),
    ),
  ),
};

/** A router without a name: what a plan is computed from. */
export const RouterInputSchema = Type.Object(routerFields, {
  $id: "RouterInput",
  description: "A router by its plate and dial alone.",
  additionalProperties: false,
});

export const NewRouterSchema = Type.Object(namedFields, {
  $id: "NewRouter",
  description: "A router to keep.",
  additionalProperties: false,
});

export const RouterChangeSchema = patchSchema<Static<typeof NewRouterSchema>>(
  "RouterChange",
  NewRouterSchema,
  "What to change of a router. A given field replaces the old one whole; null removes one that is optional.",
);

export const RouterSchema = Type.Object(
  {
    id: idField("router"),
    ...namedFields,
    dialReadAt: Type.Optional(
      momentField("When the readings of its dial were given here; they lapse like any other reading."),
    ),
    ...keptFields,
  },
  { $id: "Router", description: "A router of the shop.", additionalProperties: false },
);

export const RouterPageSchema = pageSchema("RouterPage", ref(RouterSchema), "Routers, oldest first.");

/** The components this resource answers and takes. */
export const ROUTER_SCHEMAS = [
  MarkSchema,
  DialSchema,
  NewRouterSchema,
  RouterChangeSchema,
  RouterSchema,
  RouterPageSchema,
];

export type RouterInput = Static<typeof RouterInputSchema>;
export type RouterChange = PatchOf<NewRouter>;
export type NewRouter = Static<typeof NewRouterSchema>;

/** A router as it is kept: what a plan needs, with its name. */
export type RouterRecord = Static<typeof RouterSchema>;
