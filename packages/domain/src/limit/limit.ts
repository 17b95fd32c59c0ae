import type { Bit } from "../bit/bit.ts";
import type { BitSolid } from "../bit/solid.ts";
import type { Policy } from "../policy/policy.ts";
import type { Router } from "../router/router.ts";
import type { Wood } from "../wood/wood.ts";
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
  /** What is cut; absent when the bit alone is asked about. */
  readonly wood?: Wood | undefined;
  /** Mass of the bit and of its head, with the tolerance of an estimate. */
  readonly massHighG: number;
  readonly headMassHighG: number;
  /** Measured, or what the policy takes for a bit that was not. */
  readonly runOutMm: number;
  /** From the collet face to the head's centre of mass, or to its middle if that is farther. */
  readonly overhangMm: number;
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

/** What may be judged at its safe edge because nobody measured it. */
export type Unmeasured = "mass" | "run-out";

/** One reason not to spin faster, on this bit in this router: a speed, and the values it came from, each limit's its own. */
export type FoundLimit<Name extends string, Values extends object> = {
  readonly name: Name;
  readonly strength: LimitStrength;
  readonly formula: string;
  readonly source: string;
  readonly rpm: number;
  readonly values: Values;
};

/** A limit as a definition: what it is called, how strict it is, where it comes from, how it is found. */
export type LimitDefinition<Name extends string, Values extends object> = {
  readonly name: Name;
  readonly strength: LimitStrength;
  readonly formula: string;
  readonly source: string;
  /** What may raise it when it is measured. */
  readonly restsOn: readonly Unmeasured[];
  /** Undefined if it does not apply or is not known. */
  readonly find: (context: LimitContext) => FoundLimit<Name, Values> | undefined;
  /** Undefined if nothing lifts it: a marked maximum stays. */
  readonly raisedBy: (context: LimitContext) => RaisedBy | undefined;
};

/** Ties a limit's name to the values its sentence needs; `figure` gives undefined if it does not apply. */
export function defineLimit<const Name extends string, Values extends object>({
  figure,
  raisedBy,
  restsOn = [],
  ...same
}: Pick<LimitDefinition<Name, Values>, "name" | "strength" | "formula" | "source" | "raisedBy"> & {
  readonly restsOn?: readonly Unmeasured[];
  readonly figure: (context: LimitContext) => { readonly rpm: number; readonly values: Values } | undefined;
}): LimitDefinition<Name, Values> {
  const { name, strength, formula, source } = same;
  return {
    ...same,
    restsOn,
    raisedBy,
    find: (context) => {
      const found = figure(context);
      return found && { name, strength, formula, source, rpm: found.rpm, values: found.values };
    },
  };
}
