import type { ApiDocument } from "@rimwise/shop";
import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";
import formats from "ajv-formats";
import { expect } from "vitest";

type Answer = {
  method: string;
  path: string;
  status: number;
  headers: Readonly<Record<string, string | undefined>>;
  body: unknown;
};

/** Headers that callers act on: where one is sent, the description names it. */
const ACTED_ON = [
  ...[
    "etag",
    "idempotent-replayed",
    "link",
    "location",
    "preference-applied",
    "ratelimit",
    "ratelimit-policy",
    "retry-after",
  ],
  ...["www-authenticate", "x-request-id"],
];

const DOCUMENT = "api";

/** Answered before it is known which operation is meant: a method that is not there, a path too long. */
const BEFORE_ANY_OPERATION: readonly number[] = [405, 414];

let shared: ((answer: Answer) => void) | undefined;

/**
 * Checks answers against the API description: the operation, the status and the media type must be documented, and
 * the body must fit its schema with nothing coerced, dropped or undeclared. The description is the same for every shop
 * (a test of it says so), so that it is made and compiled once for all that run in one process.
 */
export function documentedAnswers(document: () => ApiDocument): (answer: Answer) => void {
  shared ??= checkerOf(document());
  return shared;
}

function checkerOf(document: ApiDocument): (answer: Answer) => void {
  const ajv = new Ajv2020({
    allErrors: true,
    strict: true,
    strictTypes: false,
    validateSchema: false,
    discriminator: true,
  });
  formats.default(ajv);
  // The document is no schema itself: only what its pointers reach is.
  ajv.addVocabulary(Object.keys(document));
  ajv.addSchema(asValidated(document), DOCUMENT);
  const templates = Object.keys(document.paths ?? {});
  const validators = new Map<string, ValidateFunction>();

  return ({ method, path, status, headers, body }) => {
    const where = `${method} ${path} ${status}`;
    // A path as it is written comes before one with parameters (OpenAPI 3.1.1, section 4.8.8.2).
    const template = templates.includes(path) ? path : templates.find((each) => matches(each, path));
    if (template === undefined || method === "OPTIONS" || BEFORE_ANY_OPERATION.includes(status)) return;
    const response = document.paths?.[template]?.[method.toLowerCase()]?.responses?.[String(status)];
    expect(response, `${where} is documented`).toBeDefined();
    const named = document.components?.responses?.[response?.$ref?.split("/").at(-1) ?? ""] ?? response;
    const documented = Object.keys(named?.headers ?? {}).map((name) => name.toLowerCase());
    const sent = ACTED_ON.filter((name) => headers[name] !== undefined);
    expect(documented, `the headers of ${where} are documented`).toEqual(expect.arrayContaining(sent));
    if (body === undefined || status === 304) return;
    const pointer =
      response?.$ref === undefined
        ? `/paths/${escaped(template)}/${method.toLowerCase()}/responses/${status}`
        : response.$ref.slice(1);
    const media = escaped((headers["content-type"] ?? "").split(";", 1)[0] ?? "");
    const $ref = `${DOCUMENT}#${pointer}/content/${media}/schema`;
    const validate = validators.get($ref) ?? ajv.compile({ $ref });
    validators.set($ref, validate);
    expect(validate(body) ? [] : validate.errors, `${where} fits its schema`).toEqual([]);
  };
}

/**
 * The description is open for events of other versions; this one writes nothing into them that it does not name. The validator finds
 * the branch of a discriminator by what the branches themselves say, and takes no mapping.
 */
function asValidated(document: ApiDocument): object {
  const changed = (name: string, value: unknown) => {
    if (name.endsWith("EventFields")) return { ...Object(value), additionalProperties: false };
    return name === "discriminator" ? { propertyName: Object(value).propertyName } : value;
  };
  return JSON.parse(JSON.stringify(document, changed));
}

function matches(template: string, path: string): boolean {
  return new RegExp(`^${template.replaceAll(/\{[^}]+\}/g, "[^/]+")}$`).test(path);
}

function escaped(text: string): string {
  return text.replaceAll("~", "~0").replaceAll("/", "~1").replaceAll("{", "%7B").replaceAll("}", "%7D");
}
