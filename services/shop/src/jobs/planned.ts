import {
  type Cut,
  type CutSettings,
  makePlan,
  type PartPlace,
  type PartSize,
  type Plan,
  type PlanInput,
  type PolicyLayer,
  partEdges,
  partWork,
  type SearchSetting,
  stricterLayer,
  type Wood,
} from "@rimwise/domain";
import type { KnownBit } from "../learned/learned.ts";
import { inputOf } from "../plans/gather.ts";
import type { PlanRequest } from "../plans/schema.ts";
import { cutOf } from "../profiles/plan-settings.ts";
import { type JobBit, type JobGrounds, type KnownMachine, refusalOf } from "./facts.ts";
import type { NewJob } from "./schema.ts";

/** What is cut: where on which part, how many times, in which wood. */
export type Piece = {
  readonly size: PartSize;
  readonly along: PartPlace;
  readonly pieces: number;
  readonly wood: Wood;
};

/** A bit and a setting that would make a cut. */
export type Candidate = { readonly bit: JobBit } & (
  | { readonly settings: CutSettings }
  /** Found for a profile. */
  | { readonly setting: SearchSetting }
);

/** A cut planned with one bit in one machine, or why it cannot be. */
export type Attempt = {
  readonly candidate: Candidate;
  readonly machine: KnownMachine;
  readonly outcome:
    | {
        readonly kind: "planned";
        readonly request: PlanRequest;
        readonly input: PlanInput;
        readonly plan: Plan;
      }
    | { readonly kind: "refused"; readonly text: string };
};

/** What a job says of all its plans alike. */
export type JobTerms = Pick<NewJob, "policy" | "setIn">;

/** Plans a cut with one bit in one machine. `mended` tightens it after a mishap with this bit. Pure. */
export function attempt(
  candidate: Candidate,
  machine: KnownMachine,
  piece: Piece,
  terms: JobTerms,
  grounds: JobGrounds,
  mended: PolicyLayer | undefined,
): Attempt {
  const { bit } = candidate;
  const { record } = bit;
  const outOfUse = record.retirement ?? record.hold;
  if (outOfUse !== undefined) {
    const state = record.retirement === undefined ? "held" : "retired";
    return { candidate, machine, outcome: { kind: "refused", text: `It is ${state}: ${outOfUse.reason}` } };
  }
  const cut = cutOfCandidate(candidate, piece);
  const { request, input } = asked({ bit, machine, wood: piece.wood, cut }, terms, grounds.shop, mended);
  try {
    return { candidate, machine, outcome: { kind: "planned", request, input, plan: makePlan(input) } };
  } catch (error) {
    return { candidate, machine, outcome: { kind: "refused", text: refusalOf(error) } };
  }
}

function cutOfCandidate(candidate: Candidate, { size, along, pieces }: Piece): Cut {
  if ("setting" in candidate) return cutOf(candidate.setting, size, pieces, along);
  return { ...candidate.settings, edges: partEdges(size, along), work: partWork(size, pieces) };
}

/** What is planned with what. */
export type Asked = {
  readonly bit: KnownBit;
  readonly machine: KnownMachine;
  readonly wood: Wood;
  readonly cut: Cut;
};

/** The request of one plan of a job, and the input it stands for. Pure. */
export function asked(
  { bit, machine, wood, cut }: Asked,
  { policy, setIn }: JobTerms,
  shop: PolicyLayer,
  mended: PolicyLayer | undefined,
): { readonly request: PlanRequest; readonly input: PlanInput } {
  const layer = policy && mended ? stricterLayer(policy, mended) : (policy ?? mended);
  const request: PlanRequest = {
    bit: { id: bit.record.id },
    router: { id: machine.routerId },
    mounting: machine.mounting,
    woodId: wood.id,
    cut,
    ...(layer && { policy: layer }),
    ...(setIn !== undefined && { setIn }),
  };
  const input = inputOf(request, { bit, router: machine.known, wood, layers: [shop] });
  if (input === undefined) throw new Error("a bit or a router that was read is not there");
  return { request, input };
}
