import swagger from "@fastify/swagger";
import type { App } from "../http/app-type.ts";
import type { Kind, Tag } from "../store/kind.ts";
import { SERVICE_VERSION } from "../version.ts";
import { keptExamples } from "./examples.ts";
import {
  completeOperation,
  type OperationObject,
  type RouteFacts,
  routeFacts,
  showExample,
} from "./operations.ts";
import { problemComponents } from "./problem-responses.ts";
import type { Header, ResponseObject } from "./responses.ts";
import { shareHeaders } from "./shared-headers.ts";

type SchemaObject = {
  properties?: Record<string, { const?: unknown; enum?: readonly unknown[] }>;
  discriminator?: { propertyName: string; mapping?: Record<string, string> };
  oneOf?: { $ref?: string }[];
};

/** The parts of the document that are completed here. */
export type ApiDocument = {
  paths?: Record<string, Record<string, OperationObject & { operationId?: string }>>;
  components?: {
    schemas?: Record<string, SchemaObject>;
    responses?: Record<string, ResponseObject>;
    headers?: Readonly<Record<string, Header>>;
  };
};

const SCHEMA_REFERENCE = "#/components/schemas/";

/** What is no kind of record, or is more than one. */
const OTHER_TAGS: readonly Tag[] = [
  { name: "outlines", description: "Outlines of bits from drawings." },
  { name: "woods", description: "Woods and materials, with where each number comes from." },
  {
    name: "joints",
    description: "Joints of two halves: settings, how they close, and templates.",
  },
  {
    name: "panels",
    description: "Panels for frames: the size to cut, how they fit through the year, their edges.",
  },
  { name: "policy", description: "The thresholds plans are judged by." },
  { name: "stock", description: "What is due, most used, and to reorder." },
  { name: "me", description: "Who one is here." },
  { name: "events", description: "Who changed what, when and why." },
  { name: "backups", description: "Copies of the whole shop, in the service's backup folder." },
  { name: "signing", description: "The keys that the service's signatures are checked with." },
  { name: "health", description: "For operators and their monitors." },
];

const DESCRIPTION = `Keeps a shop's rack of router bits and plans cuts by geometry and physics.

The service advises; it does not certify. The tool's own markings, the router's manual, local codes and the
person in charge come first.`;

/**
 * Collects every route registered after it. The function it returns gives the API description, once
 * the app is ready.
 */
export async function describeApi(app: App, kinds: readonly Kind[]): Promise<() => ApiDocument> {
  const facts = new Map<string, RouteFacts>();
  await app.register(swagger, {
    openapi: {
      openapi: "3.1.0",
      info: {
        title: "Rimwise",
        version: SERVICE_VERSION,
        description: DESCRIPTION,
        license: { name: "MIT", identifier: "MIT" },
      },
      servers: [
        { url: "http://127.0.0.1:8080", description: "This machine, where the service listens by default." },
      ],
      tags: [...kinds.flatMap(({ tag }) => tag ?? []), ...OTHER_TAGS],
      components: {
        securitySchemes: {
          key: {
            type: "http",
            scheme: "bearer",
            description: "A key of this shop, `rw_…`, made by a manager.",
          },
        },
      },
    },
    convertConstToEnum: false,
    refResolver: { buildLocalReference: ({ $id }) => String($id) },
  });
  app.addHook("onRoute", (route) => {
    const id = route.schema?.operationId;
    if (id !== undefined) facts.set(id, routeFacts(route));
  });
  let document: ApiDocument | undefined;
  return () => {
    document ??= completed(documentOf(app), facts);
    return document;
  };
}

/** What the plugin collected, as this service's own to complete. */
function documentOf(app: App): ApiDocument {
  const collected: object = structuredClone(app.swagger());
  if (!isApiDocument(collected)) throw new Error("the plugin collected no paths");
  return collected;
}

function isApiDocument(collected: object): collected is ApiDocument {
  return "paths" in collected;
}

function completed(document: ApiDocument, facts: ReadonlyMap<string, RouteFacts>): ApiDocument {
  const examples = keptExamples();
  for (const path of Object.values(document.paths ?? {})) {
    for (const operation of Object.values(path)) {
      const known = facts.get(operation.operationId ?? "");
      if (known !== undefined) completeOperation(operation, known);
      const example = examples[operation.operationId ?? ""];
      if (example !== undefined) showExample(operation, example);
    }
  }
  const components = document.components ?? {};
  components.responses = problemComponents();
  const answers = Object.values(document.paths ?? {})
    .flatMap((path) => Object.values(path))
    .flatMap(({ responses = {} }) => Object.values(responses));
  components.headers = shareHeaders([...answers, ...Object.values(components.responses)]);
  for (const schema of Object.values(components.schemas ?? {}))
    mapDiscriminator(schema, components.schemas ?? {});
  return document;
}

/** Ajv reads each branch's own `kind`; other readers need to know which name belongs to which branch. */
function mapDiscriminator(schema: SchemaObject, schemas: Record<string, SchemaObject>): void {
  const { discriminator, oneOf } = schema;
  if (discriminator === undefined || oneOf === undefined) return;
  const { propertyName } = discriminator;
  const told = oneOf.flatMap(({ $ref = "" }) => {
    const field = schemas[$ref.slice(SCHEMA_REFERENCE.length)]?.properties?.[propertyName];
    return (field?.enum ?? [field?.const]).map((value) => ({ value, $ref }));
  });
  // Only texts tell schemas apart in OpenAPI (3.1.1, section 4.8.25): a flag does so by the schemas themselves.
  if (told.some(({ value }) => typeof value !== "string")) delete schema.discriminator;
  else discriminator.mapping = Object.fromEntries(told.map(({ value, $ref }) => [value, $ref]));
}
