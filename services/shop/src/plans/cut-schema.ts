import {
  CUTS,
  type Cut,
  type CutSummary,
  EDGE_FIELDS,
  EDGES_RANGE,
  type Edge,
  EVERY_CUT_FIELDS,
  WORK_FIELDS,
  type Work,
} from "@rimwise/domain";
import Type, { type TSchema } from "typebox";
import { componentName, fieldProperties, fieldSchema } from "../http/field-schema.ts";
import { ref } from "../http/reference.ts";
import { unionOf } from "../http/union.ts";

type Component = TSchema & { readonly $id: string };

const EdgeSchema = {
  ...Type.Unsafe<Edge>(
    Type.Object(fieldProperties(EDGE_FIELDS, fieldSchema), {
      description: "One edge, or one run of a groove.",
      additionalProperties: false,
    }),
  ),
  $id: "Edge",
};

const WorkSchema = {
  ...Type.Unsafe<Work>(
    Type.Object(fieldProperties(WORK_FIELDS, fieldSchema), {
      description:
        "The piece of wood that is held. What is not said of it is taken on the cautious side: no longer than what is cut.",
      additionalProperties: false,
    }),
  ),
  $id: "Work",
};

/** One component for each kind of cut of the domain's registry, such as `GrooveCut`. */
const KIND_SCHEMAS: readonly Component[] = CUTS.map(kindSchema);

/** A cut: told apart by `kind`, with the fields of that kind. */
export const CutSchema = unionOf<Cut>(
  "Cut",
  "kind",
  KIND_SCHEMAS,
  `one of: ${CUTS.map(({ kind }) => kind).join(", ")}`,
);

export const CUT_SCHEMAS = [EdgeSchema, WorkSchema, ...KIND_SCHEMAS, CutSchema];

function kindSchema({ kind, meaning, fields }: CutSummary): Component {
  const edges = Type.Array(ref(EdgeSchema), {
    minItems: EDGES_RANGE.min,
    maxItems: EDGES_RANGE.max,
    description: "What is to be cut, in the order to report it.",
  });
  const properties = fieldProperties({ ...EVERY_CUT_FIELDS, ...fields }, fieldSchema);
  const schema = Type.Object(
    { kind: Type.Literal(kind), edges, work: Type.Optional(ref(WorkSchema)), ...properties },
    { description: meaning, additionalProperties: false },
  );
  return { ...schema, $id: componentName(kind, "Cut") };
}
