import type { Form } from "@rimwise/domain";
import Type from "typebox";

const closed = { additionalProperties: false } as const;

export const OutlinePathSchema = Type.Object(
  {
    path: Type.String({
      minLength: 1,
      maxLength: 20000,
      description:
        "SVG path data: the right half of the bit, standing on its tip. x is the radius from the axis; y starts at 0, the tip, and falls toward the shank, as up is in a drawing. One open path; arcs with rx = ry.",
    }),
    unitMm: Type.Optional(
      Type.Number({
        minimum: 0.001,
        maximum: 1000,
        description: "Millimetres to one unit of the path, such as 25.4. Default: 1.",
      }),
    ),
  },
  { $id: "OutlinePath", description: "A drawn outline.", ...closed },
);

export const ConvertedOutlineSchema = Type.Object(
  {
    form: Type.Unsafe<Form<"custom">>({
      $ref: "CustomForm#",
      description: "The form to give a bit.",
    }),
    toleranceMm: Type.Number({
      description: "How far the outline may be from a Bézier curve of the path; 0 if it has none.",
    }),
  },
  { $id: "ConvertedOutline", description: "A drawn outline as the form of a custom bit.", ...closed },
);

/** The components this resource answers and takes; the form is one of the bits'. */
export const OUTLINE_SCHEMAS = [OutlinePathSchema, ConvertedOutlineSchema];
