import type { AnySchemaObject } from "ajv";
import fastJsonStringify, { type Schema } from "fast-json-stringify";

export type Serializer = (data: unknown) => string;

/** A JSON Schema as both Ajv and fast-json-stringify take it. */
export type Component = AnySchemaObject & Schema;
export type Components = Readonly<Record<string, Component>>;

/**
 * Makes serialisers of schemas that refer to these components. Fastify's own way hands every component of the service to
 * each serialiser; this one hands over only those that the answer reaches, which is many times faster.
 */
export function serializerMaker(components: Components) {
  const written = Object.fromEntries(
    Object.entries(components).map(([id, component]) => [
      id,
      isUnion(component) ? componentFrom({ $id: id }) : component,
    ]),
  );
  return (schema: Component): Serializer => fastJsonStringify(schema, { schema: reached(schema, written) });
}

/** Which of several components an answer is, fast-json-stringify finds out by validating it: written as it is, it need not. */
function isUnion({ discriminator, oneOf, anyOf }: Component): boolean {
  return anyOf !== undefined || (discriminator !== undefined && oneOf !== undefined);
}

/** What Fastify hands on as a schema. Throws if it is none. */
export function componentFrom(schema: unknown): Component {
  if (!isComponent(schema)) throw new Error(`${String(schema)} is no schema`);
  return schema;
}

/** An object is enough: whether it is a sound schema shows when it is compiled. */
function isComponent(schema: unknown): schema is Component {
  return typeof schema === "object" && schema !== null;
}

/** The components that a schema refers to, directly or through others. Throws if one is missing. */
function reached(schema: Component, components: Components): Record<string, Component> {
  const found = new Map<string, Component>();
  const waiting = [schema];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    for (const id of referencesIn(next)) {
      if (found.has(id)) continue;
      const component = components[id];
      if (component === undefined) throw new Error(`there is no component ${id}`);
      found.set(id, component);
      waiting.push(component);
    }
  }
  return Object.fromEntries(found);
}

const REFERENCE = /"\$ref":"([^"#]+)#/g;

function referencesIn(schema: Component): string[] {
  return [...JSON.stringify(schema).matchAll(REFERENCE)].flatMap(([, id]) => id ?? []);
}
