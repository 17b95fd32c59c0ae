import type { Bit } from "../bit/bit.ts";
import type { BitSolid } from "../bit/solid.ts";
import type { Policy } from "../policy/policy.ts";
import type { Router } from "../router/router.ts";
import type { SpeedTrial } from "./trial.ts";

/** Under a hard limit the speed must stay with its uncertainty; under a guide the nominal speed must. */
export type LimitStrength = "hard" | "guide";

/** What a limit may look at: the inputs, and what is known of them on the safe side. */
export type LimitContext = {
  readonly bit: Bit;
  readonly solid: BitSolid;
  readonly router: Router;
  readonly policy: Policy;
  readonly trials: readonly SpeedTrial[];
  /** Mass of the bit and of its head, with the tolerance of an estimate. */
  readonly massHighG: number;
  readonly headMassHighG: number;
  /** Measured, or what the policy takes for a bit that was not. */
  readonly runOutMm: number;
  /** From the collet face to the head's centre of mass, or to its middle where that is farther. */
  readonly overhangMm: number;
};

/** One reason not to spin faster: a speed, and the numbers it came from. */
export type LimitFigure = {
  readonly rpm: number;
  readonly values: Readonly<Record<string, number>>;
};

/** What would lift a limit, for the one that binds. */
export type RaisedBy =
  | { readonly code: "smaller-bit" }
  | { readonly code: "ask-in-charge" }
  | { readonly code: "faster-router" }
  | { readonly code: "less-run-out"; readonly runOutMm: number }
  | { readonly code: "thicker-shank"; readonly shankDiameterMm: number; readonly factor: number }
  | { readonly code: "less-stick-out" }
  | { readonly code: "try-one-step-faster" };

/** A limit as a definition: what it is called, how strict it is, where it comes from, how it is found. */
export type LimitDefinition<Name extends string = string> = {
  readonly name: Name;
  readonly strength: LimitStrength;
  readonly formula: string;
  readonly source: string;
  /** Undefined where it does not apply or is not known. */
  readonly figure: (context: LimitContext) => LimitFigure | undefined;
  /** Undefined where nothing lifts it: a marked maximum stays. */
  readonly raisedBy: (context: LimitContext) => RaisedBy | undefined;
};

/** Keeps the definition's name as its type; adds nothing at run time. */
export function defineLimit<const Name extends string>(
  definition: LimitDefinition<Name>,
): LimitDefinition<Name> {
  return definition;
}
