import { Ajv, type AnySchemaObject, type Options, type ValidateFunction } from "ajv";
import formats from "ajv-formats";
import { lazily } from "./lazily.ts";

const STRICT: Options = {
  allErrors: true,
  verbose: true,
  coerceTypes: false,
  useDefaults: false,
  removeAdditional: false,
  discriminator: true,
  strict: true,
  allowUnionTypes: false,
  // A test checks that every schema is valid; the first request need not.
  validateSchema: false,
};

/**
 * Query strings, path parameters and headers arrive as text; numbers among them are read, and defaults filled in.
 * Such a number may be `NaN` (unlike in a body, where JSON has none): it is refused by the bounds that every one has.
 */
const FROM_TEXT: Options = { ...STRICT, coerceTypes: true, useDefaults: true, strictNumbers: false };

type Components = Readonly<Record<string, AnySchemaObject>>;

/**
 * Makes validators of schemas that refer to these components.
 * Bodies are taken as they are or refused: nothing is turned into a number, nothing unknown is dropped.
 */
export function validatorMaker(components: Components) {
  const body = lazily(() => ajvWith(components, STRICT));
  const text = lazily(() => ajvWith(components, FROM_TEXT));
  return (schema: AnySchemaObject, httpPart: string | undefined): ValidateFunction =>
    (httpPart === "body" ? body() : text()).compile(schema);
}

function ajvWith(components: Components, options: Options): Ajv {
  const ajv = new Ajv(options);
  formats.default(ajv);
  ajv.addFormat("date-time", isMoment);
  for (const component of Object.values(components)) ajv.addSchema(component);
  return ajv;
}

const isDateTime = lazily(() =>
  formats.default(new Ajv()).compile<string>({ type: "string", format: "date-time" }),
);

/** A date-time that JavaScript's clock has too: no leap second, and a year of four digits in UTC. */
function isMoment(text: string): boolean {
  const time = new Date(text);
  return isDateTime()(text) && !Number.isNaN(time.getTime()) && /^\d{4}-/.test(time.toISOString());
}
