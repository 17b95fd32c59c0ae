import swagger from "@fastify/swagger";
import type { App } from "../http/app-type.ts";
import { SERVICE_VERSION } from "../version.ts";
import { completeOperation, type OperationObject, type RouteFacts, routeFacts } from "./operations.ts";
import { problemComponents } from "./problem-responses.ts";

type SchemaObject = {
  properties?: Record<string, { const?: unknown }>;
  discriminator?: { propertyName: string; mapping?: Record<string, string> };
  oneOf?: { $ref?: string }[];
};

/** The parts of the document that are completed here. */
export type ApiDocument = {
  paths?: Record<string, Record<string, OperationObject & { operationId?: string }>>;
  components?: { schemas?: Record<string, SchemaObject>; responses?: Record<string, object> };
};

const SCHEMA_REFERENCE = "#/components/schemas/";

const TAGS = [
  { name: "bits", description: "The rack of router bits." },
  { name: "imports", description: "Files of bits that were taken in." },
  { name: "outlines", description: "Outlines of bits from drawings." },
  { name: "routers", description: "The shop's routers and their speed dials." },
  { name: "woods", description: "Woods and materials, with where each number comes from." },
  {
    name: "plans",
    description: "Plans for cuts: speed, dial mark, passes and order of work, every limit explained.",
  },
  {
    name: "panels",
    description: "Panels for frames: the size to cut, how they fit through the year, their edges.",
  },
  { name: "policy", description: "The thresholds plans are judged by." },
  { name: "places", description: "Where bits are kept, what is there and what is missing." },
  { name: "photographs", description: "Photographs of bits." },
  { name: "loans", description: "Bits out and back." },
  { name: "inspections", description: "What was found on bits, and what follows." },
  { name: "sharpenings", description: "What bits measured before and after, and what is left of an edge." },
  { name: "trials", description: "What bits did at which speed, and the next speed to try." },
  { name: "readings", description: "Speeds read at the marks of dials." },
  { name: "collets", description: "Routers' collets and their condition." },
  { name: "runOuts", description: "Run-out of bits as clamped in routers." },
  { name: "uses", description: "Work that was done, and what happened." },
  { name: "stock", description: "What is due, most used, and to reorder." },
  { name: "courses", description: "Courses, and what a class sees of itself." },
  { name: "enrolments", description: "Who teaches and who learns in a course." },
  { name: "qualifications", description: "What people were tested on, showed and were allowed." },
  { name: "approvals", description: "Approved settings: issued, lapsing by themselves, signed." },
  { name: "checks", description: "May this person run this bit on this router at this mark, now?" },
  { name: "people", description: "Who uses the shop." },
  { name: "me", description: "Who one is here." },
  { name: "keys", description: "Who may call, and what they may do." },
  { name: "events", description: "Who changed what, when and why." },
  { name: "checkpoints", description: "Signed statements of how far the history reached." },
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
export async function describeApi(app: App): Promise<() => ApiDocument> {
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
      tags: TAGS,
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
    document ??= completed(structuredClone<ApiDocument>(Object(app.swagger())), facts);
    return document;
  };
}

function completed(document: ApiDocument, facts: ReadonlyMap<string, RouteFacts>): ApiDocument {
  for (const path of Object.values(document.paths ?? {})) {
    for (const operation of Object.values(path)) {
      const known = facts.get(operation.operationId ?? "");
      if (known !== undefined) completeOperation(operation, known);
    }
  }
  const components = document.components ?? {};
  components.responses = problemComponents();
  for (const schema of Object.values(components.schemas ?? {}))
    mapDiscriminator(schema, components.schemas ?? {});
  return document;
}

/** Ajv reads each branch's own `kind`; other readers need to be told which name belongs to which branch. */
function mapDiscriminator(
  { discriminator, oneOf }: SchemaObject,
  schemas: Record<string, SchemaObject>,
): void {
  if (discriminator === undefined || oneOf === undefined) return;
  const { propertyName } = discriminator;
  discriminator.mapping = Object.fromEntries(
    oneOf.map(({ $ref = "" }) => {
      const branch = schemas[$ref.slice(SCHEMA_REFERENCE.length)];
      return [String(branch?.properties?.[propertyName]?.const), $ref];
    }),
  );
}
