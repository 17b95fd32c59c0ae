import Type, { type TArray, type TObject, type TSchema } from "typebox";
import { ProblemSchema } from "../problems/schema.ts";
import { ref } from "./reference.ts";
import type { Component } from "./routes.ts";

/** Whether each row stands for itself. */
export const BatchQuery = Type.Object(
  {
    mode: Type.Optional(
      Type.Enum(["all-or-nothing", "row-by-row"], {
        type: "string",
        description:
          "Whether one row that cannot be taken refuses all, or itself alone. Default: all-or-nothing.",
      }),
    ),
  },
  { additionalProperties: false },
);

/** What every creation of many says of a row that it left. */
export const RefusedRowSchema = Type.Object(
  {
    row: Type.Integer({ minimum: 1, description: "Its number in the list, from 1." }),
    problem: ref(ProblemSchema),
  },
  { $id: "RefusedRow", description: "A row that was not taken, and why.", additionalProperties: false },
);

/** The body of a request that creates many at once. */
export function manySchema<Item extends Component>($id: string, item: Item, most: number) {
  const data = Type.Array(ref(item), { minItems: 1, maxItems: most, description: `Up to ${most}.` });
  return Type.Object(
    { data },
    { $id, description: "Many to create in one request.", additionalProperties: false },
  );
}

/** What answers it. */
export function manyCreatedSchema<Item extends Component>($id: string, item: Item) {
  const data = Type.Array(ref(item), { description: "What was created, in the order of the request." });
  const refused = Type.Array(ref(RefusedRowSchema), {
    description: "Rows that were not taken; none when all or nothing was asked for.",
  });
  return Type.Object(
    { data, refused },
    { $id, description: "All that was created.", additionalProperties: false },
  );
}

/** How many rows a body has, before any of them is looked at. */
export function outlineOf({ properties: { data } }: TObject<{ data: TArray<TSchema> }>) {
  return Type.Object({ data: { ...data, items: Type.Object({}) } }, { additionalProperties: false });
}
