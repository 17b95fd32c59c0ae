import type { Answer, Shop } from "./shop.ts";

export const CSV = "text/csv";
export const NDJSON = "application/x-ndjson";

const COLUMNS = "name,kind,diameterMm,cuttingLengthMm,shankDiameterMm,wings";

export const NAMES = ["First", "Second", "Third"];

/** A CSV of straight bits, one a name, with more columns if they are given. */
export function straights(names: readonly string[], more: Readonly<Record<string, string>> = {}): string {
  const header = [COLUMNS, ...Object.keys(more)].join(",");
  const rows = names.map((name) => [name, "straight,12,30,12.7,2", ...Object.values(more)].join(","));
  return `${[header, ...rows].join("\r\n")}\r\n`;
}

/** Many rows of a CSV, none like another. */
export function manyStraights(count: number): string {
  return straights(Array.from({ length: count }, (_, index) => `Straight ${index}`));
}

type ImportAsk = { readonly query?: string; readonly type?: string; readonly key?: string };

/** Sends a file to a shop. */
export function sendFile(
  { ask }: Shop,
  body: string | Buffer,
  { query = "", type = CSV, key }: ImportAsk = {},
): Promise<Answer> {
  const headers = { "content-type": type };
  return ask("POST", `/v1/bits/import${query}`, { body, headers, ...(key !== undefined && { key }) });
}

/** Every bit of a shop as a file. */
export async function exportFrom({ ask }: Shop, format: "csv" | "ndjson" = "csv"): Promise<string> {
  return (await ask("GET", `/v1/bits/export?format=${format}`)).text;
}

export async function bitsOf({ ask }: Shop) {
  return (await ask("GET", "/v1/bits?limit=200")).body.data;
}

/** The types of a shop's events, oldest first. */
export async function eventsOf({ ask }: Shop): Promise<string[]> {
  const { body } = await ask("GET", "/v1/events?limit=200");
  return body.data.map(({ type }: { type: string }) => type);
}
