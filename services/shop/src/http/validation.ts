import { Ajv, type Options } from "ajv";
import formats from "ajv-formats";
import type { App } from "./app-type.ts";

const STRICT: Options = {
  allErrors: true,
  verbose: true,
  coerceTypes: false,
  removeAdditional: false,
  useDefaults: false,
  discriminator: true,
  strict: true,
  allowUnionTypes: false,
};

/**
 * A query is text, so numbers and defaults are read from it; a misspelt parameter is still refused. With `strictNumbers` Ajv
 * would hold an infinity that it has read from text to no bounds at all.
 */
const FROM_TEXT: Options = { ...STRICT, coerceTypes: true, useDefaults: true, strictNumbers: false };

/**
 * Bodies are taken as they are or refused: nothing is turned into a number, nothing unknown is dropped.
 * Compilers are built at the first route that is compiled, when every component is registered.
 */
export function validateStrictly(app: App): void {
  const body = lazily(() => ajvWith(app, STRICT));
  const text = lazily(() => ajvWith(app, FROM_TEXT));
  app.setValidatorCompiler(({ schema, httpPart }) => (httpPart === "body" ? body() : text()).compile(schema));
}

function ajvWith(app: App, options: Options): Ajv {
  const ajv = new Ajv(options);
  formats.default(ajv);
  ajv.addFormat("date-time", isTellable);
  for (const component of Object.values(app.getSchemas())) ajv.addSchema(Object(component));
  return ajv;
}

const asWritten = formats.default(new Ajv()).compile({ type: "string", format: "date-time" });

/** What is written as a time and also told by the clock here: no leap second, and a year of four digits in UTC. */
function isTellable(text: string): boolean {
  const time = new Date(text);
  return asWritten(text) && !Number.isNaN(time.getTime()) && /^\d{4}-/.test(time.toISOString());
}

function lazily<Value>(make: () => Value): () => Value {
  let value: Value | undefined;
  return () => {
    value ??= make();
    return value;
  };
}
