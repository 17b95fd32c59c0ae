import type { FastifyRequest } from "fastify";
import {
  type FieldFault,
  MOST_FAULTS,
  notValid,
  Problem,
  pathOf,
  type RequestPart,
} from "../problems/problem.ts";
import type { App } from "./app-type.ts";

/**
 * What no text may hold: control characters but tab and line ends (Unicode category Cc), halves of a surrogate pair, and what turns
 * the writing direction of all that follows (UAX #9, section 2: embeddings, overrides and isolates).
 */
const UNWANTED = /[\u202A-\u202E\u2066-\u2069]|\p{Cs}|(?![\t\n\r])\p{Cc}/u;
const EVERY_UNWANTED = new RegExp(UNWANTED.source, "gu");

/** ASCII without control characters needs no second look. */
const PLAIN = /^[\t\n\r\x20-\x7e]*$/;

/** What is wrong with a text that may not be taken in. */
export const NOT_TEXT = {
  message: "This holds characters that are no text.",
  accepted:
    "text in well-formed Unicode, without control characters other than tab and line end, and without characters that turn the writing direction",
};

/** A text, or what is wrong with it and where: a JSON Pointer (RFC 6901) from the root of the value. */
export type TextFault = { readonly pointer: string; readonly message: string; readonly accepted: string };

/** Whether a text may be taken in. */
export function isWellFormed(text: string): boolean {
  return PLAIN.test(text) || !UNWANTED.test(text);
}

/** A text in the one normal form that is kept: NFC (UAX #15). */
export function normalText(text: string): string {
  return PLAIN.test(text) ? text : text.normalize("NFC");
}

/** A text that is repeated to whoever sent it, with what may not be in it replaced. */
export function harmless(text: string): string {
  return text.replaceAll(EVERY_UNWANTED, "\uFFFD");
}

/** A JSON value with every string in it in normal form, names of members too. What may not be in a text is added to the faults. */
export function normalized(value: unknown, faults: TextFault[], pointer = ""): unknown {
  if (typeof value === "string") {
    if (!isWellFormed(value)) faults.push({ pointer, ...NOT_TEXT });
    return normalText(value);
  }
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value))
    return value.map((each, index) => normalized(each, faults, `${pointer}/${index}`));
  const members = Object.entries(value).map(([name, each]) => {
    if (!isWellFormed(name)) faults.push({ pointer, ...NOT_TEXT });
    const step = normalText(name).replaceAll("~", "~0").replaceAll("/", "~1");
    return [normalText(name), normalized(each, faults, `${pointer}/${step}`)];
  });
  return Object.fromEntries(members);
}

/** A part of a request in normal form, and the refusal of what in it is no text. */
export function normalizedPart(
  value: unknown,
  part: RequestPart,
): { readonly normal: unknown; readonly fault: Problem | undefined } {
  const faults: TextFault[] = [];
  const normal = normalized(value, faults);
  const named = faults.slice(0, MOST_FAULTS).map((fault): FieldFault => ({ in: part, ...fault }));
  return { normal, fault: named.length === 0 ? undefined : notValid(named) };
}

/** Takes queries in normal form, and answers that nothing is at a path that is no text. Bodies are `readJsonBodies`' to take. */
export function takeText(app: App): void {
  app.addHook("preValidation", (request, _reply, done) => {
    if (!isTextPath(request)) return done(new Problem("not-found", `Nothing is at ${pathOf(request)}.`));
    // Without a question mark there is no query to take; a route without one refuses whatever comes.
    if (!request.url.includes("?") || request.routeOptions.schema?.querystring === undefined) return done();
    const { fault, normal } = normalizedPart(request.query, "query");
    request.query = normal;
    done(fault);
  });
}

function isTextPath(request: FastifyRequest): boolean {
  const parameters = Object.values(Object(request.params));
  return parameters.every((each) => typeof each !== "string" || isWellFormed(each));
}
