import type { ValidateFunction } from "ajv";
import type { FastifySchemaCompiler, FastifySerializerCompiler } from "fastify";
import type { App } from "./app-type.ts";
import { lazily } from "./lazily.ts";
import { type Component, componentFrom, type Serializer, serializerMaker } from "./serialization.ts";
import { validatorMaker } from "./validation.ts";

type Compilers = {
  readonly validator: (schema: Component, httpPart: string | undefined) => ValidateFunction;
  readonly serializer: (schema: Component) => Serializer;
};

/**
 * Compiles a schema when the first request or answer needs it: compiling them all took most of the start. The function it
 * returns compiles every one at once and throws at the first that is broken; a test calls it.
 */
export function compileAtFirstUse(app: App): () => void {
  // Read at the first schema that is compiled, when every component is registered.
  const compilers = lazily(() => compilersFor(app.getSchemas()));
  const every: (() => unknown)[] = [];
  const validatorCompiler: FastifySchemaCompiler<unknown> = ({ schema, httpPart }) => {
    const validator = lazily(() => compilers().validator(componentFrom(schema), httpPart));
    every.push(validator);
    const validated: ReturnType<typeof validatorCompiler> = (data: unknown) => {
      const validate = validator();
      const isValid = validate(data);
      validated.errors = validate.errors ?? null;
      return isValid;
    };
    return validated;
  };
  const serializerCompiler: FastifySerializerCompiler<unknown> = ({ schema }) => {
    const serializer = lazily(() => compilers().serializer(componentFrom(schema)));
    every.push(serializer);
    return (data: unknown) => serializer()(data);
  };
  // Given to each route: for the app's own compilers Fastify copies all components again with every route.
  app.addHook("onRoute", (route) => {
    route.validatorCompiler = validatorCompiler;
    route.serializerCompiler = serializerCompiler;
  });
  return () => {
    for (const compile of every) compile();
  };
}

/** Apps of one process that have the same components share what is compiled. */
const known = new Map<string, Compilers>();

function compilersFor(schemas: Readonly<Record<string, unknown>>): Compilers {
  const text = JSON.stringify(schemas);
  const compilers = known.get(text) ?? compilersOf(schemas);
  known.set(text, compilers);
  return compilers;
}

/** Compilers that compile each schema once. */
function compilersOf(schemas: Readonly<Record<string, unknown>>): Compilers {
  const components = Object.fromEntries(
    Object.entries(schemas).map(([id, schema]) => [id, componentFrom(schema)]),
  );
  const makeValidator = validatorMaker(components);
  const makeSerializer = serializerMaker(components);
  const validators = new Map<string, ValidateFunction>();
  const serializers = new Map<string, Serializer>();
  return {
    validator: (schema, httpPart) =>
      keptIn(validators, `${httpPart} ${JSON.stringify(schema)}`, () => makeValidator(schema, httpPart)),
    serializer: (schema) => keptIn(serializers, JSON.stringify(schema), () => makeSerializer(schema)),
  };
}

function keptIn<Value>(kept: Map<string, Value>, key: string, make: () => Value): Value {
  const value = kept.get(key) ?? make();
  kept.set(key, value);
  return value;
}
