import { answerDetails, type Delivered } from "./answer.ts";
import type { WholeAnswer } from "./attempt.ts";
import { apiErrorFor, ConnectionError } from "./errors.ts";
import type { Problem } from "./generated/types.gen.ts";

/**
 * What a whole answer delivers. Throws the ApiError of an answer that is not a success, and a
 * ConnectionError if a success is of another media type, or not the JSON it says it is: something in between answered, or cut
 * it short.
 */
export function readAnswer<Result>(
  { status, headers, text }: WholeAnswer,
  answers: readonly string[] = ["application/json"],
): Delivered<Result> {
  const isJson = /[/+]json\b/.test(headers.get("content-type") ?? "");
  if (status < 200 || status > 299) {
    throw apiErrorFor({ status, headers, problem: isJson ? problemIn(text) : undefined });
  }
  requireType(status, headers.get("content-type"), answers);
  return { data: isJson ? parsed(text) : text || undefined, response: answerDetails(status, headers) };
}

/** A guest network's page is a success too, and no record. */
function requireType(status: number, contentType: string | null, answers: readonly string[]): void {
  const [type = ""] = (contentType ?? "").toLowerCase().split(";", 1);
  if (answers.length === 0 ? status === 204 : answers.includes(type.trim())) return;
  const wanted = answers.length === 0 ? "no content" : answers.join(" or ");
  const message = `The answer is ${contentType ?? "of no type"}, not ${wanted}`;
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
