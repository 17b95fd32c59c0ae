import { isUtf8 } from "node:buffer";
import { Problem } from "../problems/problem.ts";
import type { App } from "./app-type.ts";
import { normalizedPart } from "./text.ts";

/** No body that is described here is nested nearly so deep. */
const DEEPEST = 64;

/** Brackets of lists, and those of objects. */
const [LIST_OPENS, LIST_CLOSES, OBJECT_OPENS, OBJECT_CLOSES] = [0x5b, 0x5d, 0x7b, 0x7d];
const QUOTE = 0x22;
const BACKSLASH = 0x5c;

/** A JSON text of nothing but ASCII and without escapes of other characters holds no string that needs a look. */
const NEEDS_A_LOOK = /[^\t\n\r\x20-\x7e]|\\[ubf]/;

/**
 * Reads JSON bodies (RFC 8259). One that is nested deeper than anything here is refused before anything walks it; strings are taken
 * in normal form, or refused when they are no text.
 */
export function readJsonBodies(app: App): void {
  const parse = app.getDefaultJsonParser("error", "error");
  app.removeContentTypeParser("application/json");
  app.addContentTypeParser<Buffer>("application/json", { parseAs: "buffer" }, (request, bytes, done) => {
    if (!isUtf8(bytes)) return done(new Problem("not-json", "The body is not UTF-8."));
    const body = bytes.toString();
    if (depthOf(body) > DEEPEST) {
      return done(new Problem("not-json", `The body is nested deeper than ${DEEPEST} levels.`));
    }
    parse(request, body, (error, value) => {
      if (error !== null || !NEEDS_A_LOOK.test(body)) return done(error, value);
      const { fault, normal } = normalizedPart(value, "body");
      done(fault ?? null, normal);
    });
  });
}

/** How deep a JSON text is nested, found without reading it as JSON. */
export function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let isInText = false;
  for (let index = 0; index < text.length; index += 1) {
    const sign = text.charCodeAt(index);
    if (isInText) {
      if (sign === BACKSLASH) index += 1;
      else if (sign === QUOTE) isInText = false;
    } else if (sign === QUOTE) isInText = true;
    else if (sign === LIST_OPENS || sign === OBJECT_OPENS) {
      depth += 1;
      if (depth > deepest) deepest = depth;
    } else if (sign === LIST_CLOSES || sign === OBJECT_CLOSES) depth -= 1;
  }
  return deepest;
}
