/**
 * What is wrong with one input, as data: the JSON Pointer of the field, a code, and the
 * numbers that say what would be accepted. Sentences are made by `wording`.
 */
export type Fault = {
  readonly pointer: string;
  readonly code: FaultCode;
  readonly values: Readonly<Record<string, number | string>>;
};

export type FaultCode =
  | "not-a-quantity"
  | "not-finite"
  | "out-of-range"
  | "unknown-choice"
  | "pilot-too-large"
  | "profile-too-large"
  | "outline-turns-back"
  | "diameter-not-outline"
  | "shank-too-thick"
  | "min-above-max"
  | "readings-do-not-rise"
  | "mark-off-dial"
  | "marks-mixed"
  | "no-edges"
  | "setting-out-of-reach"
  | "cut-too-wide"
  | "body-would-rub"
  | "cut-does-not-suit-bit"
  | "nothing-removed"
  | "grew-in-sharpening"
  | "outline-needed";

/** Thrown only where no answer exists. Carries every fault that was found, never just the first. */
export class DomainError extends Error {
  readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[]) {
    super(faults.map((fault) => `${fault.pointer || "/"}: ${fault.code}`).join("; "));
    this.name = "DomainError";
    this.faults = faults;
  }
}

/** The same faults seen from one level further out: `/diameterMm` becomes `/form/diameterMm`. */
export function faultsUnder(pointer: string, faults: readonly Fault[]): Fault[] {
  return faults.map((fault) => ({ ...fault, pointer: pointer + fault.pointer }));
}
