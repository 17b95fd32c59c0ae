import { type AnswerDetails, answerDetails, type Delivered } from "./answer.ts";
import type { ReadableAnswer } from "./attempt.ts";
import { apiErrorFor, ConnectionError } from "./errors.ts";
import type { Problem } from "./generated/types.gen.ts";

/** What a conditional read gives if the record is still the version that was named. */
export const NOT_MODIFIED: unique symbol = Symbol("not modified");
export type NotModified = typeof NOT_MODIFIED;

/** Stands for the media type of an answer that has no body. */
export const NO_CONTENT = "no content";

/**
 * What an answer delivers. Throws the ApiError of an answer that is not a success, and a
 * ConnectionError if a success is of another media type, or not the JSON it says it is: something in between answered, or cut
 * it short.
 */
export function readAnswer<Result>(
  { status, headers, content }: ReadableAnswer,
  answers: readonly string[] = ["application/json"],
  isConditional = false,
): Delivered<Result> {
  const response = answerDetails(status, headers);
  if (status === 304 && isConditional) return delivered(NOT_MODIFIED, response);
  const isJson = /[/+]json\b/.test(headers.get("content-type") ?? "");
  if (status < 200 || status > 299) {
    const problem = isJson && typeof content === "string" ? problemIn(content) : undefined;
    throw apiErrorFor({ status, headers, problem });
  }
  requireType(status, headers.get("content-type"), answers);
  if (typeof content !== "string") return delivered(content, response);
  return delivered(isJson ? parsed(content) : content || undefined, response);
}

/** The data as what the operation is documented to give: its media type has been looked at. */
// biome-ignore lint/suspicious/noExplicitAny: what came over the wire has no type; the API document says which it is.
function delivered<Result>(data: any, response: AnswerDetails): Delivered<Result> {
  return { data, response };
}

/** A guest network's page is a success too, and no record. */
function requireType(status: number, contentType: string | null, answers: readonly string[]): void {
  const [type = ""] = (contentType ?? "").toLowerCase().split(";", 1);
  const wanted = answers.length === 0 ? [NO_CONTENT] : answers;
  if (wanted.includes(status === 204 ? NO_CONTENT : type.trim())) return;
  const message = `The answer is ${contentType ?? "of no type"}, not ${wanted.join(" or ")}`;
  throw new ConnectionError(message, { code: "not-the-service" });
}

function parsed(text: string) {
  try {
    return JSON.parse(text);
  } catch (cause) {
    throw new ConnectionError("The answer is not the JSON it says it is", { cause });
  }
}

function problemIn(text: string): Problem | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return isProblem(value) ? value : undefined;
  } catch {
    // An answer by something in between, cut short: its status says enough.
    return undefined;
  }
}

function isProblem(value: unknown): value is Problem {
  return typeof value === "object" && value !== null && "code" in value && "requestId" in value;
}
