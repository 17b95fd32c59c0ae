import {
  type DimensionSpec,
  type Fault,
  FORMS,
  type Form,
  type FormSummary,
  formFaults,
} from "@rimwise/domain";
import fc from "fast-check";

type Draft = Record<string, unknown>;

/** A bound that a fault names is kept by this share: it stands a little inside. */
const INSIDE = 1e-6;

/** Lengths are typed to thousandths at most. */
const TYPED = 1000;

/** Faults are mended one after another; a form takes no more rounds than it has dimensions. */
const ROUNDS = 20;

/** Forms of one kind, made from the registry: any values in the ranges, then mended as their faults say. */
export function formsOf(summary: FormSummary): fc.Arbitrary<Form> {
  return drafts(summary)
    .map((draft) => mended(summary, draft))
    .filter((form) => form !== undefined);
}

/** The same before mending: what a person might type. */
export function drafts(summary: FormSummary): fc.Arbitrary<Draft> {
  const entries = Object.entries(summary.dimensions).map(([name, spec]): [string, fc.Arbitrary<unknown>] => [
    name,
    spec.optional ? fc.option(values(spec), { nil: undefined }) : values(spec),
  ]);
  return fc.record(Object.fromEntries(entries)).map((draft) => ({
    kind: summary.kind,
    ...Object.fromEntries(Object.entries(draft).filter(([, value]) => value !== undefined)),
  }));
}

/** Whether a record has the kind and dimensions of a form; whether they fit is for `formFaults` to say. */
export function isForm(draft: Draft): draft is Draft & Form {
  const summary = FORMS.find(({ kind }) => kind === draft["kind"]);
  return (
    summary !== undefined &&
    Object.entries(summary.dimensions).every(([name, { optional }]) => optional || draft[name] !== undefined)
  );
}

function values(spec: DimensionSpec): fc.Arbitrary<unknown> {
  switch (spec.type) {
    case "choice":
      return fc.constantFrom(...spec.names);
    case "segments":
      return segmentLists();
    case "measure":
      return spec.unit === "count"
        ? fc.integer({ min: spec.min, max: spec.max })
        : number(spec.min, spec.max);
  }
}

/** Segments that rise from the tip; whether arcs fit between their ends is left to chance. */
function segmentLists() {
  return fc
    .array(
      fc.record({
        kind: fc.constantFrom("line", "arc"),
        riseMm: fc.oneof(fc.constant(0), number(0.1, 12)),
        radiusMm: fc.oneof(fc.constant(0), number(0, 40)),
        arcRadiusMm: number(0.1, 60),
        bulge: fc.constantFrom("outward", "inward"),
      }),
      { minLength: 1, maxLength: 8 },
    )
    .map((parts) => {
      let toMm = 0;
      return parts.map(({ kind, riseMm, radiusMm, arcRadiusMm, bulge }) => {
        toMm += riseMm;
        return kind === "line" ? { kind, toMm, radiusMm } : { kind, toMm, radiusMm, arcRadiusMm, bulge };
      });
    });
}

function mended(summary: FormSummary, start: Draft): Form | undefined {
  let draft = start;
  for (let round = 0; round < ROUNDS && isForm(draft); round += 1) {
    const [fault] = formFaults(draft);
    if (fault === undefined) return draft;
    const next = withMended(summary, draft, fault);
    if (next === undefined) return undefined;
    draft = next;
  }
  return undefined;
}

/** The draft with the dimension a fault points at put at a value that the fault says is accepted, or without it; undefined if neither is possible. */
function withMended(
  summary: FormSummary,
  draft: Draft,
  { pointer, code, values: said }: Fault,
): Draft | undefined {
  const bounds: Readonly<Record<string, unknown>> = said;
  const [, name = "", index, field] = pointer.split("/");
  if (name === "segments") {
    const list = Object.values(Object(draft["segments"]));
    const mendedList = list.map((segment, at) => {
      if (String(at) !== index) return segment;
      const { toMm, radiusMm } = Object(segment);
      if (code === "outline-turns-back" || code === "no-value-fits") return { kind: "line", toMm, radiusMm };
      if (field === "toMm") return { ...Object(segment), toMm: 1 };
      return { ...Object(segment), [String(field)]: Number(bounds["min"]) * (1 + INSIDE) };
    });
    return { ...draft, segments: mendedList };
  }
  const spec = summary.dimensions[name];
  if (code === "no-value-fits") return spec?.optional ? { ...draft, [name]: undefined } : undefined;
  const leastMm = spec?.type === "measure" ? spec.min : 0;
  const want = bounds["want"] ?? bounds["max"] ?? bounds["below"] ?? bounds["diameterMm"];
  if (code === "diameter-not-outline") return { ...draft, [name]: Number(want) };
  if (want === undefined) return { ...draft, [name]: Number(bounds["min"]) * (1 + INSIDE) };
  // Somewhere between the least and the bound, and the same place for the same draft.
  const share = (Number(draft[name]) % 1) * (1 - INSIDE);
  return { ...draft, [name]: leastMm + share * (Number(want) - leastMm) };
}

/** Mostly what a person might type: of all doubles from 0 up to 40, nine in ten are less than any tool can measure. */
function number(min: number, max: number) {
  const typed = fc.integer({ min: Math.ceil(min * TYPED), max: Math.floor(max * TYPED) });
  return fc.oneof(
    { weight: 4, arbitrary: typed.map((thousandths) => thousandths / TYPED) },
    { weight: 1, arbitrary: fc.double({ min, max, noNaN: true, noDefaultInfinity: true }) },
  );
}
