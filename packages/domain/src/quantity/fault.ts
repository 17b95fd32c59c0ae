/** Accepted bounds: inside both, or beyond the one that is named. */
export type Bounds =
  | { readonly min: number; readonly max: number }
  | { readonly min: number }
  | { readonly max: number }
  | { readonly above: number | string }
  | { readonly below: number };

/** What a kind of cut may need of a bit. */
export type BitNeed =
  | "panel-raising-form"
  | "joint-form"
  | "parallel-edges"
  | "parallel-edges-without-pilot"
  | "edges-only"
  | "flush-bearing";

/** A figure as somebody may have meant it. */
export type Meant = { readonly value: number; readonly unit: "g" | "oz" | "lb" | "in" };

type NoValues = Readonly<Record<string, never>>;
type Place = { readonly xMm: number; readonly zMm: number };
type TooMuch = { readonly given: number; readonly max: number };

/** What each fault says beside its code: the numbers and names that say what would be accepted. */
export type FaultValues = {
  readonly "not-a-quantity": {
    readonly given: string;
    readonly units: readonly string[];
    readonly examples: readonly string[];
  };
  readonly "not-finite": { readonly accepted: Bounds | undefined };
  readonly "out-of-range": { readonly given: number | string } & Bounds;
  readonly "no-value-fits": { readonly min: number; readonly max: number };
  readonly "unknown-choice": { readonly names: readonly string[] };
  readonly "pilot-too-large": { readonly pilotDiameterMm: number; readonly diameterMm: number };
  readonly "profile-too-large": TooMuch;
  readonly "outline-turns-back": NoValues;
  readonly "diameter-not-outline": { readonly given: number; readonly want: number };
  readonly "shank-too-thick": { readonly given: number; readonly largest: number };
  readonly "min-above-max": TooMuch;
  readonly "marks-do-not-rise": { readonly least: number };
  readonly "readings-do-not-rise": { readonly above: number } | { readonly below: number };
  readonly "readings-disagree": { readonly mark: number | string; readonly rpm: number };
  readonly "reading-outside-range": { readonly given: number; readonly min: number; readonly max: number };
  readonly "mark-off-dial": { readonly first: number | string; readonly last: number | string };
  readonly "marks-mixed": NoValues;
  readonly "no-edges": NoValues;
  readonly "setting-out-of-reach": TooMuch;
  readonly "cut-too-wide": TooMuch;
  readonly "body-would-rub": { readonly given: number; readonly min: number };
  readonly "cut-does-not-suit-bit": { readonly needs: BitNeed; readonly forms: readonly string[] };
  readonly "nothing-removed": NoValues;
  readonly "grew-in-sharpening":
    | { readonly maxDiameterMm: number }
    | { readonly maxLengthMm: number }
    | { readonly maxMassG: number };
  readonly "outline-needed": NoValues;
  readonly "sharpened-too-far": { readonly minDiameterMm: number };
  readonly "mass-not-of-outline": {
    readonly given: number;
    readonly estimatedG: number;
    readonly min: number;
    readonly max: number;
    readonly meant?: Meant;
  };
  readonly "length-not-likely": {
    readonly what: "run-out" | "stick-out" | "smallest-diameter";
    readonly given: number;
    readonly bounds: { readonly min: number; readonly max?: number };
    readonly meant?: Meant;
  };
  readonly "thicknesses-disagree": { readonly given: number; readonly cutMm: number };
  readonly "bushing-not-given": NoValues;
  readonly "longer-than-work": TooMuch;
  readonly "nothing-measured": NoValues;
  readonly "not-measured-here": NoValues;
  readonly "not-settable-here": NoValues;
  readonly "stock-too-thin": { readonly given: number; readonly above: number };
  readonly "id-given-twice": { readonly given: string };
  readonly "unknown-set-up": { readonly given: string };
  readonly "set-ups-in-circle": { readonly setupIds: readonly string[] };
  readonly "profile-doubles-back": Place;
  readonly "profile-leaves-stock": Place;
  readonly "profile-end-inside-stock": Place & { readonly thicknessMm: number };
  readonly "profile-removes-nothing": NoValues;
};

export type FaultCode = keyof FaultValues;

/**
 * What is wrong with one input, as data: the JSON Pointer of the field, a code, and the values of that code. Sentences are
 * made by `wording`.
 */
export type Fault<Code extends FaultCode = FaultCode> = {
  readonly [Each in Code]: {
    readonly pointer: string;
    readonly code: Each;
    readonly values: FaultValues[Each];
  };
}[Code];

/** Thrown only if no answer exists. Carries every fault that was found, never just the first. */
export class DomainError extends Error {
  readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[]) {
    super(faults.map((fault) => `${fault.pointer || "/"}: ${fault.code}`).join("; "));
    this.name = "DomainError";
    this.faults = faults;
  }
}

/**
 * The same faults seen from one level further out.
 * @example
 * faultsUnder("/form", [{ pointer: "/diameterMm", code: "not-finite", values: {} }])[0].pointer // → "/form/diameterMm"
 */
export function faultsUnder(pointer: string, faults: readonly Fault[]): Fault[] {
  return faults.map((fault) => ({ ...fault, pointer: pointer + fault.pointer }));
}
