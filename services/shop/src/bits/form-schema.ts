import { type DimensionSpec, FORMS, type Form, type FormSummary } from "@rimwise/domain";
import Type, { type TSchema } from "typebox";
import { ref } from "../http/reference.ts";
import { GivenSegmentSchema } from "./segment-schema.ts";

type Component = TSchema & { readonly $id: string };

/** One component for each form of the domain's registry, such as `StraightForm`. */
export const FORM_SCHEMAS: readonly Component[] = FORMS.map(formSchema);

/** A bit's form: told apart by `kind`, with the dimensions of that kind. */
export const FormSchema = {
  ...Type.Unsafe<Form>({
    type: "object",
    discriminator: { propertyName: "kind" },
    oneOf: FORMS.map((form) => ({ $ref: `${componentName(form)}#` })),
  }),
  $id: "Form",
  description: `one of: ${FORMS.map(({ kind }) => kind).join(", ")}`,
};

function formSchema(form: FormSummary): Component {
  const dimensions = Object.entries(form.dimensions).map(([name, spec]) => [
    name,
    spec.optional ? Type.Optional(dimensionSchema(spec)) : dimensionSchema(spec),
  ]);
  const $id = componentName(form);
  const schema = Type.Object(
    { kind: Type.Literal(form.kind, { description: "The form." }), ...Object.fromEntries(dimensions) },
    { title: form.title, description: form.meaning, additionalProperties: false },
  );
  return { ...schema, $id };
}

function dimensionSchema(spec: DimensionSpec): TSchema {
  const { meaning: description } = spec;
  switch (spec.type) {
    case "choice":
      return Type.Enum([...spec.names], { type: "string", description });
    case "segments":
      return Type.Array(ref(GivenSegmentSchema), { minItems: 1, maxItems: spec.most, description });
    case "measure": {
      const bounds = { minimum: spec.min, maximum: spec.max, description };
      return spec.unit === "count" ? Type.Integer(bounds) : Type.Number(bounds);
    }
  }
}

/** `round-over` is `RoundOverForm`. */
function componentName({ kind }: FormSummary): string {
  const words = kind.split("-").map((word) => word.charAt(0).toUpperCase() + word.slice(1));
  return `${words.join("")}Form`;
}
