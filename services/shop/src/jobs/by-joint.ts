import {
  compareRanks,
  type FormKind,
  formDiameterMm,
  jointDefinition,
  type SolvedJoint,
  solveJoint,
} from "@rimwise/domain";
import { bareBit } from "../bits/bare.ts";
import type { BitRecord } from "../bits/schema.ts";
import { isUsable } from "../bits/standing.ts";
import { withoutUndefined } from "../http/given.ts";
import type { Turns } from "../http/turns.ts";
import { notValid } from "../problems/problem.ts";
import type { Answer } from "../store/store.ts";
import { type FindBit, isOfSizes, requireSizesOf } from "./candidates.ts";
import type { WantedByJoint } from "./cut-schema.ts";
import { bitsOfForm, refusalOf } from "./facts.ts";
import type { Candidate } from "./planned.ts";

/** So many bits of each half are paired: a rack has a few of each form. */
const MOST_OF_A_HALF = 8;

type Ways = { readonly answer: Answer; readonly turns: Turns };
/** The pairs that were found for the joints of a job, so that its halves are given to one. */
export type BestPairs = Map<string, BestPair>;

/** The two bits that fit each other best; if there are none, why. */
type BestPair = { readonly best: Pair | undefined; readonly why: string };

type Pair = { readonly bits: readonly [BitRecord, BitRecord]; readonly solved: SolvedJoint };

/** The bit for one half of a joint; if there is none, why. */
export type FoundForJoint = { readonly candidates: readonly Candidate[]; readonly why: string | undefined };

/**
 * The bit and setting of one half of a joint, of the two bits of the rack that fit each other best: by what weighs on the joint, then by
 * whether both are here, then by whether they are one set, then by how closely they close. The same pair for either half. None if no two bits make it.
 */
export async function candidatesByJoint(
  wanted: WantedByJoint,
  { thicknessMm, pointer }: { readonly thicknessMm: number; readonly pointer: string },
  find: FindBit,
  pairs: BestPairs,
  ways: Ways,
): Promise<FoundForJoint> {
  const { halves } = jointDefinition(wanted.joint);
  const place = halves.findIndex(({ name }) => name === wanted.half);
  if (place < 0) {
    const accepted = `one of: ${halves.map(({ name }) => name).join(", ")}`;
    throw notValid([
      { in: "body", pointer: `${pointer}/wanted/half`, message: "The joint has no such half.", accepted },
    ]);
  }
  const asked = askedOf(wanted, thicknessMm, place === 0, pointer);
  const { pointers: _, ...alike } = asked;
  const name = JSON.stringify(alike);
  const { best, why } = pairs.get(name) ?? (await bestPair(asked, ways));
  pairs.set(name, { best, why });
  if (best === undefined) return { candidates: [], why };
  const half = place === 0 ? best.solved.first : best.solved.second;
  const bit = await ways.answer(find(best.bits[place === 0 ? 0 : 1].id));
  return { candidates: bit === undefined ? [] : [{ bit, settings: half.cut }], why: undefined };
}

/** A joint as both its halves ask for it, the first before the second. */
type AskedJoint = {
  readonly joint: WantedByJoint["joint"];
  readonly fit: Parameters<typeof solveJoint>[2];
  readonly toleranceMm: number | undefined;
  readonly sizes: readonly [Sizes, Sizes];
  /** Where in the job's body the sizes are. */
  readonly pointers: readonly [string, string];
};

type Sizes = NonNullable<WantedByJoint["sizes"]>;

/** The half that is cut is as thick as its part; the other one too unless it is said. */
function askedOf(
  { joint, sizes = {}, otherSizes = {}, otherThicknessMm, toleranceMm, clearanceMm, depthMm }: WantedByJoint,
  ownMm: number,
  isFirst: boolean,
  pointer: string,
): AskedJoint {
  const fit = withoutUndefined({
    thicknessMm: isFirst ? ownMm : (otherThicknessMm ?? ownMm),
    otherThicknessMm: isFirst ? otherThicknessMm : ownMm,
    clearanceMm,
    depthMm,
  });
  const [own, other] = [`${pointer}/wanted/sizes`, `${pointer}/wanted/otherSizes`];
  return isFirst
    ? { joint, fit, toleranceMm, sizes: [sizes, otherSizes], pointers: [own, other] }
    : { joint, fit, toleranceMm, sizes: [otherSizes, sizes], pointers: [other, own] };
}

async function bestPair(asked: AskedJoint, { answer, turns }: Ways): Promise<BestPair> {
  const { joint, fit, toleranceMm, sizes, pointers } = asked;
  const [one, two] = jointDefinition(joint).halves;
  const ofHalf = async ({ forms }: { readonly forms: readonly FormKind[] }, half: 0 | 1) => {
    requireSizesOf(forms, sizes[half], pointers[half]);
    const found: BitRecord[] = [];
    for (const form of forms) found.push(...(await answer(bitsOfForm(form))));
    const wantedSizes = withoutUndefined({ sizes: sizes[half], toleranceMm });
    const fitting = found.filter((bit) => isUsable(bit) && isOfSizes(bit, wantedSizes));
    return fitting.slice(0, MOST_OF_A_HALF);
  };
  const firsts = await ofHalf(one, 0);
  const isWithItself = one.forms.join() === two.forms.join();
  const seconds = isWithItself ? firsts : await ofHalf(two, 1);
  const pairs: Pair[] = [];
  let why = "There is no bit for one of its halves.";
  for (const first of firsts) {
    // One bit cuts both halves of a joint with itself.
    for (const second of isWithItself ? [first] : seconds) {
      await turns();
      try {
        pairs.push({
          bits: [first, second],
          solved: solveJoint(joint, [bareBit(first), bareBit(second)], fit),
        });
      } catch (error) {
        // These two do not meet in this stock; others may.
        why = `${first.name} and ${second.name}: ${refusalOf(error)}`;
      }
    }
  }
  return { best: pairs.sort((a, b) => compareRanks(ranks(a), ranks(b)))[0], why };
}

function ranks({ bits, solved }: Pair): number[] {
  const cares = solved.findings.filter(({ severity }) => severity === "care").length;
  const away = bits.filter(({ state }) => state !== "in-rack").length;
  const openMm = solved.closure.gap.mm + solved.closure.overlap.mm;
  const [first, second] = bits;
  const areOneSet = first.setName !== undefined && first.setName === second.setName;
  return [cares, away, areOneSet ? 0 : 1, openMm, Math.max(...bits.map(({ form }) => formDiameterMm(form)))];
}
