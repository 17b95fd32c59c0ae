import type { FastifySchemaCompiler, FastifySerializerCompiler } from "fastify";
import type { App } from "./app-type.ts";
import { lazily } from "./lazily.ts";
import { type Component, componentFrom, type Serializer, serializerMaker } from "./serialization.ts";
import { type Validator, validatorMaker } from "./validation.ts";

type Compilers = {
  readonly validator: (schema: Component, httpPart: string | undefined) => Validator;
  readonly serializer: (schema: Component) => Serializer;
};

declare module "fastify" {
  interface FastifyContextConfig {
    /** What the body is held against before the handler, which holds its parts against the documented schema one by one. */
    bodyOutline?: Component;
  }
}

export type Compiled = {
  /** Compiles every schema at once and throws at the first that is broken; a test calls it. */
  readonly compileAll: () => void;
  /** What is wrong with a part of a body by a component's schema; undefined if nothing is. */
  readonly validatorOf: (schema: object) => Validator;
};

/** Compiles a schema when the first request or answer needs it: compiling them all took most of the start. */
export function compileAtFirstUse(app: App): Compiled {
  // Read at the first schema that is compiled, when every component is registered.
  const compilers = lazily(() => compilersFor(app.getSchemas()));
  const every: (() => unknown)[] = [];
  const validatorFor = (schema: unknown, httpPart: string | undefined) => {
    const validator = lazily(() => compilers().validator(componentFrom(schema), httpPart));
    every.push(validator);
    const validated: ReturnType<FastifySchemaCompiler<unknown>> = (data: unknown) => {
      const errors = validator()(data);
      validated.errors = errors === undefined ? null : [...errors];
      return errors === undefined;
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
    const outline = route.config?.bodyOutline;
    route.validatorCompiler = ({ schema, httpPart }) =>
      validatorFor(httpPart === "body" ? (outline ?? schema) : schema, httpPart);
    route.serializerCompiler = serializerCompiler;
  });
  return {
    compileAll: () => {
      for (const compile of every) compile();
    },
    validatorOf: (schema) => {
      const validator = lazily(() => compilers().validator(componentFrom(schema), "body"));
      every.push(validator);
      return (value) => validator()(value);
    },
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
  const validators = new Map<string, Validator>();
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
