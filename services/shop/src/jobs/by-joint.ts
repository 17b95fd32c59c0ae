import {
  type FormKind,
  formDiameterMm,
  jointDefinition,
  type SolvedJoint,
  solveJoint,
} from "@rimwise/domain";
import { bareBit } from "../bits/bare.ts";
import type { BitRecord } from "../bits/schema.ts";
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
type Pair = { readonly bits: readonly [BitRecord, BitRecord]; readonly solved: SolvedJoint };

/** The bit for one half of a joint; if there is none, why. */
export type FoundForJoint = { readonly candidates: readonly Candidate[]; readonly why: string | undefined };

/**
 * The bit and setting of one half of a joint, of the two bits of the rack that fit each other best: by what weighs on the joint, then by
 * whether both are here, then by how closely they close. The same pair for either half. None if no two bits make it.
 */
export async function candidatesByJoint(
  wanted: WantedByJoint,
  { thicknessMm, pointer }: { readonly thicknessMm: number; readonly pointer: string },
  find: FindBit,
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
  const { best, why } = await bestPair(
    wanted,
    place === 0 ? { thicknessMm } : { otherMm: thicknessMm },
    pointer,
    ways,
  );
  if (best === undefined) return { candidates: [], why };
  const half = place === 0 ? best.solved.first : best.solved.second;
  const bit = await ways.answer(find(best.bits[place === 0 ? 0 : 1].id));
  return { candidates: bit === undefined ? [] : [{ bit, settings: half.cut }], why: undefined };
}

/** The thickness of the half that is cut; the other one is as thick unless it is said. */
type Stock = { readonly thicknessMm: number } | { readonly otherMm: number };

async function bestPair(wanted: WantedByJoint, stock: Stock, pointer: string, { answer, turns }: Ways) {
  const { joint, clearanceMm, depthMm, otherThicknessMm } = wanted;
  const given = "thicknessMm" in stock ? stock.thicknessMm : stock.otherMm;
  const asked = withoutUndefined({
    thicknessMm: "thicknessMm" in stock ? given : (otherThicknessMm ?? given),
    otherThicknessMm: "thicknessMm" in stock ? otherThicknessMm : given,
    clearanceMm,
    depthMm,
  });
  const [one, two] = jointDefinition(joint).halves;
  const ofHalf = async (forms: readonly FormKind[], half: { readonly isAsked: boolean }) => {
    const sizes = (half.isAsked ? wanted.sizes : wanted.otherSizes) ?? {};
    requireSizesOf(forms, sizes, `${pointer}/wanted/${half.isAsked ? "sizes" : "otherSizes"}`);
    const found: BitRecord[] = [];
    for (const form of forms) found.push(...(await answer(bitsOfForm(form))));
    const fitting = found.filter((bit) => isUsable(bit) && isOfSizes(bit, { ...wanted, sizes }));
    return fitting.slice(0, MOST_OF_A_HALF);
  };
  const firsts = await ofHalf(one.forms, { isAsked: "thicknessMm" in stock });
  const isWithItself = one.forms.join() === two.forms.join();
  const seconds = isWithItself ? firsts : await ofHalf(two.forms, { isAsked: "otherMm" in stock });
  const pairs: Pair[] = [];
  let why = "There is no bit for one of its halves.";
  for (const first of firsts) {
    // One bit cuts both halves of a joint with itself.
    for (const second of isWithItself ? [first] : seconds) {
      await turns();
      try {
        pairs.push({
          bits: [first, second],
          solved: solveJoint(joint, [bareBit(first), bareBit(second)], asked),
        });
      } catch (error) {
        // These two do not meet in this stock; others may.
        why = `${first.name} and ${second.name}: ${refusalOf(error)}`;
      }
    }
  }
  return { best: pairs.sort((a, b) => compare(ranks(a), ranks(b)))[0], why };
}

function isUsable({ hold, retirement }: BitRecord): boolean {
  return hold === undefined && retirement === undefined;
}

function ranks({ bits, solved }: Pair): number[] {
  const cares = solved.findings.filter(({ severity }) => severity === "care").length;
  const away = bits.filter(({ state }) => state !== "in-rack").length;
  const openMm = solved.closure.gap.mm + solved.closure.overlap.mm;
  return [cares, away, openMm, Math.max(...bits.map(({ form }) => formDiameterMm(form)))];
}

function compare(one: readonly number[], other: readonly number[]): number {
  return one.map((rank, index) => rank - (other[index] ?? 0)).find((difference) => difference !== 0) ?? 0;
}
