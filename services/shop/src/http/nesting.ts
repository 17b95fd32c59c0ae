import { Problem } from "../problems/problem.ts";
import type { App } from "./app-type.ts";

/** No body that is described here is nested nearly so deep. */
const DEEPEST = 64;

const OPENING = new Set([0x5b, 0x7b]);
const CLOSING = new Set([0x5d, 0x7d]);
const QUOTE = 0x22;
const BACKSLASH = 0x5c;

/** Reads JSON bodies. One that is nested deeper than anything here is refused before anything walks it. */
export function readJsonBodies(app: App): void {
  const parse = app.getDefaultJsonParser("error", "error");
  app.removeContentTypeParser("application/json");
  app.addContentTypeParser<string>("application/json", { parseAs: "string" }, (request, body, done) => {
    if (depthOf(body) > DEEPEST) {
      done(new Problem("not-json", `The body is nested deeper than ${DEEPEST} levels.`));
      return;
    }
    parse(request, body, done);
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
    else if (OPENING.has(sign)) {
      depth += 1;
      if (depth > deepest) deepest = depth;
    } else if (CLOSING.has(sign)) depth -= 1;
  }
  return deepest;
}
