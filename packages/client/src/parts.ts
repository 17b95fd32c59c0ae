import type { Plan } from "./generated/types.gen.ts";
import type { Loose } from "./operation.ts";

/** The fields of plans that a call can ask for, from the type of its query. */
export type FieldOf<Query extends { readonly fields?: readonly string[] }> = NonNullable<
  Query["fields"]
>[number];

/** A query that asks for whole plans. */
export type Whole<Query> = Omit<Loose<Query>, "fields"> & { readonly fields?: undefined };

/** A query that asks for some fields of plans. */
export type Asking<Query, Field> = Omit<Loose<Query>, "fields"> & { readonly fields: readonly Field[] };

/** An answer whose plans have these fields alone, with what comes along always. */
export type PartsOf<Answer, Field extends PropertyKey> = Answer extends Plan
  ? Pick<Answer, (Field | "verdict" | "advice") & keyof Answer>
  : Answer extends object
    ? { [Name in keyof Answer]: PartsOf<Answer[Name], Field> }
    : Answer;
