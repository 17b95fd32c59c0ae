import type { FastifyRequest } from "fastify";
import Type, { type TSchema } from "typebox";
import type { App } from "../http/app-type.ts";
import { Problem } from "../problems/problem.ts";
import { FORMATS, type Format, MEDIA_TYPES } from "./schema.ts";

declare module "fastify" {
  interface FastifyContextConfig {
    /** The body is a file of bits, handed on as a stream. */
    takesFiles?: true;
  }
}

const TYPES = Object.values(MEDIA_TYPES);

/** Hands the bodies of files on as they come, to the routes that take them; all others refuse them by their type. */
export function takeFiles(app: App): void {
  app.addContentTypeParser(TYPES, ({ routeOptions }, body, done) => {
    if (routeOptions.config.takesFiles) done(null, body);
    else done(notTaken("application/json"));
  });
}

/** The `content` of an answer that is a file. */
export const FILE_ANSWER = contentOf(Type.String({ description: "The file, in UTF-8." }));

/** The `content` of a body that is a file. It is looked at row by row, never as one value. */
export const FILE_BODY = contentOf(Type.Unknown({ description: "The file, in UTF-8." }));

/** The format that a request's body says it is in. Throws if it is not a file's. */
export function formatOf({ headers }: FastifyRequest): Format {
  const [type = ""] = (headers["content-type"] ?? "").split(";", 1);
  const format = FORMATS.find((each) => MEDIA_TYPES[each] === type.trim().toLowerCase());
  if (format === undefined) throw notAFile();
  return format;
}

/** The refusal of a body that is not a file of bits. */
export function notAFile(): Problem {
  return notTaken(...TYPES);
}

function notTaken(...types: readonly string[]): Problem {
  return new Problem("media-type-not-supported", `Send the body as ${types.join(" or ")}.`, {
    headers: { Accept: types.join(", ") },
  });
}

function contentOf(schema: TSchema) {
  return Object.fromEntries(TYPES.map((type) => [type, { schema }]));
}
