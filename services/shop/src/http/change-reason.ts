import type { FastifyRequest } from "fastify";
import { notValid } from "../problems/problem.ts";
import type { App } from "./app-type.ts";
import { normalText } from "./text.ts";

declare module "fastify" {
  interface FastifyRequest {
    /** What the caller gives as the reason of a change; undefined if nothing is given. */
    why: string | undefined;
  }
}

const HEADER = "Change-Reason";
const HEADER_IN_LOWER_CASE = HEADER.toLowerCase();
const MOST_CHARACTERS = 300;

/** Bytes a header may carry as they are. */
const VISIBLE_ASCII = /^[\x20-\x7e]*$/;
/** No control characters, nothing unassigned, no line or paragraph ends, nothing that turns the writing direction. */
const PRINTABLE = /^[^\p{Cc}\p{Cs}\p{Cn}\p{Co}\p{Zl}\p{Zp}\p{Bidi_Control}]*$/u;

/** What the header takes, for the API description and for refusals. */
export const REASON_ACCEPTED = `text of 1 to ${MOST_CHARACTERS} printable characters; write % as %25, and what is not ASCII in UTF-8 percent-encoding`;

/** Reads the reason of every request that may change something, before anything is done. */
export function takeReasons(app: App): void {
  app.decorateRequest("why", undefined);
  app.addHook("onRequest", (request, _reply, done) => {
    if (request.headers[HEADER_IN_LOWER_CASE] === undefined) return done();
    if (request.method !== "GET" && request.method !== "HEAD") request.why = reasonOf(request);
    done();
  });
}

function reasonOf({ headers }: FastifyRequest): string | undefined {
  const given = headers[HEADER_IN_LOWER_CASE];
  if (given === undefined) return undefined;
  const text = typeof given === "string" && VISIBLE_ASCII.test(given) ? decoded(given) : undefined;
  const isUsable =
    text !== undefined && PRINTABLE.test(text) && text !== "" && [...text].length <= MOST_CHARACTERS;
  if (isUsable) return text;
  throw notValid([
    {
      in: "header",
      pointer: `/${HEADER}`,
      message: "This is not a reason that can be kept.",
      accepted: REASON_ACCEPTED,
    },
  ]);
}

function decoded(text: string): string | undefined {
  try {
    return normalText(decodeURIComponent(text).trim());
  } catch {
    return undefined;
  }
}
