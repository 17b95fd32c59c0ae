import { Ajv, type AnySchemaObject, type ErrorObject, type Options, type ValidateFunction } from "ajv";
import formats from "ajv-formats";
import { isDay, isMoment } from "./dates.ts";
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

/** So many values of a body are judged whole, with every fault; of a larger one the first fault is named. */
const MOST_JUDGED_WHOLE = 2000;

type Components = Readonly<Record<string, AnySchemaObject>>;

/** What is wrong with a value; undefined if nothing is. */
export type Validator = (value: unknown) => readonly ErrorObject[] | undefined;

/**
 * Makes validators of schemas that refer to these components. Bodies are taken as they are or refused: nothing is turned into a
 * number, nothing unknown is dropped. To say every fault costs much more than to find the first, and most of all where there are
 * thousands: so of a large body only the first is named.
 */
export function validatorMaker(components: Components) {
  const first = lazily(() => ajvWith(components, { ...STRICT, allErrors: false }));
  const every = lazily(() => ajvWith(components, STRICT));
  const text = lazily(() => ajvWith(components, FROM_TEXT));
  return (schema: AnySchemaObject, httpPart: string | undefined): Validator => {
    if (httpPart !== "body") return errorsOf(text().compile(schema));
    const quick = errorsOf(first().compile(schema));
    const whole = lazily(() => errorsOf(every().compile(schema)));
    return (value) => {
      const errors = quick(value);
      if (errors === undefined || !hasFewValues(value)) return errors;
      return whole()(value);
    };
  };
}

function errorsOf(validate: ValidateFunction): Validator {
  return (value) => (validate(value) ? undefined : (validate.errors ?? []));
}

/** Whether a body holds few enough values to be judged whole. It is looked through no further than that. */
function hasFewValues(value: unknown): boolean {
  const waiting: unknown[] = [value];
  let count = 0;
  while (waiting.length > 0) {
    const next = waiting.pop();
    count += 1;
    if (count + waiting.length > MOST_JUDGED_WHOLE) return false;
    if (typeof next === "object" && next !== null)
      waiting.push(...Object.values(next).slice(0, MOST_JUDGED_WHOLE + 1));
  }
  return true;
}

function ajvWith(components: Components, options: Options): Ajv {
  const ajv = new Ajv(options);
  formats.default(ajv);
  ajv.addFormat("date-time", isMoment);
  ajv.addFormat("date", isDay);
  for (const component of Object.values(components)) ajv.addSchema(component);
  return ajv;
}
