import { answerDetails, type Delivered } from "./answer.ts";
import type { WholeAnswer } from "./attempt.ts";
import { apiErrorFor, ConnectionError } from "./errors.ts";
import type { Problem } from "./generated/types.gen.ts";

/**
 * What a whole answer delivers. Throws the ApiError of an answer that is not a success, and a
 * ConnectionError if a success is not the JSON it says it is: something cut it short.
 */
export function readAnswer<Result>({ status, headers, text }: WholeAnswer): Delivered<Result> {
  const isJson = /[/+]json\b/.test(headers.get("content-type") ?? "");
  if (status < 200 || status > 299) {
    throw apiErrorFor({ status, headers, problem: isJson ? problemIn(text) : undefined });
  }
  return { data: isJson ? parsed(text) : text || undefined, response: answerDetails(status, headers) };
}

function parsed(text: string) {
  try {
    return JSON.parse(text);
  } catch (cause) {
    throw new ConnectionError("The answer is not the JSON it says it is.", { cause });
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
