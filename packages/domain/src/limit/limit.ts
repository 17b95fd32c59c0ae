import type { Bit } from "../bit/bit.ts";
import type { BitSolid } from "../bit/solid.ts";
import type { Policy } from "../policy/policy.ts";
import type { Router } from "../router/router.ts";

/** Under a hard limit the speed must stay with its uncertainty; under a guide the nominal speed must. */
export type LimitStrength = "hard" | "guide";

/** What a limit may look at. */
export type LimitContext = {
  readonly bit: Bit;
  readonly solid: BitSolid;
  readonly router: Router;
  readonly policy: Policy;
};

/** One reason not to spin faster: a speed, and the numbers it came from. */
export type LimitFigure = {
  readonly rpm: number;
  readonly values: Readonly<Record<string, number>>;
};

/** A limit as a definition: what it is called, how strict it is, where it comes from, how it is found. */
export type LimitDefinition<Name extends string = string> = {
  readonly name: Name;
  readonly strength: LimitStrength;
  readonly formula: string;
  readonly source: string;
  /** Undefined where it does not apply or is not known. */
  readonly figure: (context: LimitContext) => LimitFigure | undefined;
};

/** Keeps the definition's name as its type; adds nothing at run time. */
export function defineLimit<const Name extends string>(
  definition: LimitDefinition<Name>,
): LimitDefinition<Name> {
  return definition;
}
