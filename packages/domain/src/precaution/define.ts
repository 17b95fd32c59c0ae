import type { Bit } from "../bit/bit.ts";
import type { BitSolid } from "../bit/solid.ts";
import type { GuideName } from "../cut/guide-name.ts";
import type { Cut } from "../cut/kind/registry.ts";
import type { CutSetup } from "../cut/setup.ts";
import type { GuidePrecaution } from "../guide/define.ts";
import type { FeedDirection } from "../guide/direction.ts";
import type { Mounting } from "../router/mounting.ts";
import type { Router } from "../router/router.ts";
import type { Wood } from "../wood/wood.ts";

/** What a precaution may look at. */
export type PrecautionContext = {
  readonly bit: Bit;
  readonly solid: BitSolid;
  readonly router: Router;
  readonly mounting: Mounting;
  /** Whether it is more than an ordinary handheld bit, by size and mass. */
  readonly isHeavy: boolean;
  readonly cut: Cut;
  readonly setup: CutSetup;
  readonly wood: Wood;
  /** What guides the work or the router; undefined when nothing does. */
  readonly guide: GuideName | undefined;
  /** Which way it is fed; undefined when nothing guides it. */
  readonly direction: FeedDirection | undefined;
  /** Whether the order of work asks for a test piece. */
  readonly hasTestPiece: boolean;
  /** What belongs to the guide. */
  readonly guideSays: readonly GuidePrecaution[];
};

/** One precaution: its code, and what it has to say if it applies. */
export type PrecautionDefinition<Code extends string, Values extends object> = {
  readonly code: Code;
  readonly find: (context: PrecautionContext) => ({ readonly code: Code } & Values) | undefined;
};

/** Ties a code to the values its sentence needs; `applies` gives undefined if there is nothing to say. */
export function definePrecaution<const Code extends string, Values extends object>({
  code,
  applies,
}: {
  readonly code: Code;
  readonly applies: (context: PrecautionContext) => Values | undefined;
}): PrecautionDefinition<Code, Values> {
  return {
    code,
    find: (context) => {
      const values = applies(context);
      return values && { code, ...values };
    },
  };
}
