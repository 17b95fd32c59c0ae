import type { ApiDocument } from "@rimwise/shop";
import { type Counts, idOf } from "./large-shop.ts";

/** One row of the benchmark: a read operation, plain or narrowed by one of its filters. */
export type ReadRow = { readonly name: string; readonly urlFor: (counts: Counts, turn: number) => string };

type Parameter = {
  readonly name: string;
  readonly in: string;
  readonly required?: boolean;
  readonly schema?: { readonly enum?: readonly string[] };
};
type Sample = (counts: Counts, turn: number) => string;

/** Widely scattered, the same for every run. */
const STRIDE = 7919;

const any =
  (prefix: keyof Counts): Sample =>
  (counts, turn) =>
    idOf(prefix, (turn * STRIDE) % counts[prefix]);

/** What each path parameter stands for. */
const PATH_SAMPLES: Readonly<Record<string, Sample>> = {
  approvalId: any("approval"),
  bitId: any("bit"),
  checkpointId: any("checkpoint"),
  colletId: any("collet"),
  inspectionId: any("inspection"),
  keyId: any("key"),
  loanId: any("loan"),
  personId: any("person"),
  photographId: any("photo"),
  placeId: any("place"),
  planId: any("plan"),
  qualificationId: any("qualification"),
  dialReadingId: any("reading"),
  runOutReadingId: any("reading"),
  routerId: any("router"),
  sharpeningId: any("sharpening"),
  speedTrialId: any("trial"),
  useId: any("use"),
  woodId: () => "black-cherry",
  courseId: any("course"),
};

const WEEK_MS = 7 * 24 * 60 * 60 * 1000;

const QUERY_SAMPLES: Readonly<Record<string, Sample>> = {
  after: (counts, turn) => String((turn * STRIDE) % counts.event),
  bitId: any("bit"),
  by: any("key"),
  courseId: any("course"),
  days: () => "30",
  diameterMm: () => "25.4",
  fitsRouterId: any("router"),
  homePlaceId: any("place"),
  insideId: any("place"),
  personId: any("person"),
  placeId: any("place"),
  q: (_counts, turn) =>
    ["3 1/2 panel", "half inch shank cove", "straight 12 mm", "round over"][turn % 4] ?? "",
  routerId: any("router"),
  shankDiameterMm: () => "12.7",
  since: () => new Date(Date.now() - WEEK_MS).toISOString(),
  subjectId: any("bit"),
  toleranceMm: () => "1",
  type: () => "bit.created",
  until: () => new Date(Date.now() - WEEK_MS).toISOString(),
};

/**
 * Every read of the API description that needs a scope and answers JSON: plain, once for each of its filters, and once for
 * each two of them.
 */
export function readRows({ paths = {} }: ApiDocument): ReadRow[] {
  return Object.entries(paths).flatMap(([path, { get }]) => {
    const answer: { content?: object } = Object(get?.responses?.["200"]);
    const isJson = Object.keys(answer.content ?? {}).includes("application/json");
    if (get?.operationId === undefined || get["x-scope"] === undefined || !isJson) return [];
    const parameters: readonly Parameter[] = Object(get.parameters ?? []);
    const queries = parameters.filter(
      ({ in: place, name }) => place === "query" && !["limit", "cursor"].includes(name),
    );
    const needed = queries.filter(({ required }) => required === true);
    const filters = queries.filter(({ required }) => required !== true);
    const pairs = filters.flatMap((one, index) => filters.slice(index + 1).map((other) => [one, other]));
    return [[], ...filters.map((each) => [each]), ...pairs].map((asked) => ({
      name: [get.operationId, asked.map(({ name }) => name).join("&")].filter(Boolean).join(" ?"),
      urlFor: urlOf(path, [...needed, ...asked]),
    }));
  });
}

function urlOf(path: string, queries: readonly Parameter[]): ReadRow["urlFor"] {
  return (counts, turn) => {
    const place = path.replaceAll(/\{(\w+)\}/g, (_, name) => pathSample(path, name)(counts, turn));
    const query = new URLSearchParams(queries.map((each) => [each.name, querySample(each)(counts, turn)]));
    return queries.length > 0 ? `${place}?${query}` : place;
  };
}

function pathSample(path: string, name: string): Sample {
  if (path.startsWith("/v1/run-out-readings/")) return any("runout");
  // The students of a course: `large-shop.ts` puts ten in each, in order.
  if (path.includes("/students/") && name === "personId") {
    return (counts, turn) => idOf("person", 10 * ((turn * STRIDE) % counts.course));
  }
  const sample = PATH_SAMPLES[name];
  if (sample !== undefined) return sample;
  if (name === "importId") return () => "import_none";
  throw new Error(`no sample for the path parameter ${name}`);
}

function querySample({ name, schema }: Parameter): Sample {
  const choices = schema?.enum ?? [];
  if (choices.length > 0) return (_counts, turn) => choices[turn % choices.length] ?? "";
  const sample = QUERY_SAMPLES[name];
  if (sample === undefined) throw new Error(`no sample for the query parameter ${name}`);
  return sample;
}
