import { type DimensionSpec, FORMS, type Form, type FormSummary } from "@rimwise/domain";
import Type, { type TSchema } from "typebox";
import { componentName, fieldProperties, fieldSchema } from "../http/field-schema.ts";
import { ref } from "../http/reference.ts";
import { unionOf } from "../http/union.ts";
import { GivenSegmentSchema } from "./segment-schema.ts";

type Component = TSchema & { readonly $id: string };

/** One component for each form of the domain's registry, such as `StraightForm`. */
export const FORM_SCHEMAS: readonly Component[] = FORMS.map(formSchema);

/** A bit's form: distinguished by `kind`, with the dimensions of that kind. */
export const FormSchema = unionOf<Form>(
  "Form",
  "kind",
  FORM_SCHEMAS,
  `one of: ${FORMS.map(({ kind }) => kind).join(", ")}`,
);

function formSchema({ kind, title, meaning, dimensions }: FormSummary): Component {
  const schema = Type.Object(
    {
      kind: Type.Literal(kind, { description: "The form." }),
      ...fieldProperties(dimensions, dimensionSchema),
    },
    { title, description: meaning, additionalProperties: false },
  );
  return { ...schema, $id: componentName(kind, "Form") };
}

function dimensionSchema(spec: DimensionSpec): TSchema {
  if (spec.type !== "segments") return fieldSchema(spec);
  const { most, meaning: description } = spec;
  return Type.Array(ref(GivenSegmentSchema), { minItems: 1, maxItems: most, description });
}
