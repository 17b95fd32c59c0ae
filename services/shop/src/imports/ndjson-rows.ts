import { normalized, type TextFault } from "../http/text.ts";
import { linesOf } from "./lines.ts";
import { idFaults, NOT_UTF8, type Row, type RowFault, TOO_LONG, TOO_MANY_EMPTY } from "./rows.ts";

const NOT_AN_OBJECT: RowFault = {
  message: "This line is not a JSON object.",
  accepted: "one JSON object a line: the fields of a bit, and `id` if it has one",
};

/** The rows of newline-delimited JSON: one bit a line, as the API takes it, with its `id` or without. */
export async function* ndjsonRows(source: AsyncIterable<Buffer>): AsyncGenerator<Row> {
  for await (const { number: line, bytes, isUtf8, isTooLong, isOneEmptyTooMany } of linesOf(source)) {
    if (isOneEmptyTooMany) return yield { kind: "broken", line, faults: [TOO_MANY_EMPTY] };
    if (isTooLong) yield { kind: "unreadable", line, faults: [TOO_LONG] };
    else if (!isUtf8) yield { kind: "unreadable", line, faults: [NOT_UTF8] };
    else if (bytes.toString().trim() !== "") yield rowOf(line, bytes.toString());
  }
}

function rowOf(line: number, text: string): Row {
  const value = parsed(text);
  if (value === undefined) return { kind: "unreadable", line, faults: [NOT_AN_OBJECT] };
  const notText: TextFault[] = [];
  const { id, ...bit } = Object(normalized(value, notText));
  const inTexts = notText.map(({ pointer, ...fault }): RowFault => ({ column: pointer, ...fault }));
  const faults = [...idFaults(id, "/id"), ...inTexts];
  if (faults.length > 0) return { kind: "unreadable", line, faults };
  return {
    kind: "row",
    line,
    id: id === undefined ? undefined : String(id),
    content: { kind: "whole", bit },
    faults: [],
    readings: [],
  };
}

function parsed(text: string): { readonly id?: unknown } | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === "object" && value !== null && !Array.isArray(value) ? value : undefined;
  } catch {
    return undefined;
  }
}
