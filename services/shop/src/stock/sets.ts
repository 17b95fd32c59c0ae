import { describeJointFinding, pairFindings, showIn } from "@rimwise/domain";
import type { Static } from "typebox";
import { bareBit } from "../bits/bare.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { Question } from "../store/query.ts";
import { stock } from "./reads.ts";
import type { BitSetSchema } from "./schema.ts";

type BitSet = Static<typeof BitSetSchema>;

/** So many bits of one set are laid on each other: a set has two or three, a boxed one a dozen. */
const MOST_OF_A_SET = 50;

/** Sets by name, after this one, with how their bits fit each other as they measure now. */
export function* bitSets(after: string, most: number): Question<BitSet[]> {
  const sets: BitSet[] = [];
  for (const name of yield* stock.setNames(after, most)) {
    const bits = yield* stock.ofSet(name, MOST_OF_A_SET);
    sets.push(setOf(name, bits));
  }
  return sets;
}

function setOf(name: string, bits: BitRecord[]): BitSet {
  const findings = bits
    .filter(({ retirement }) => retirement === undefined)
    .flatMap((one, index, kept) => kept.slice(index + 1).flatMap((other) => findingsOf(one, other)));
  return {
    setName: name,
    bits,
    isSharpenedApart: findings.some(({ severity }) => severity !== "note"),
    findings,
  };
}

/** Bits of a box that are no pair have nothing to fit. */
function findingsOf(one: BitRecord, other: BitRecord): BitSet["findings"] {
  return pairFindings(bareBit(one), bareBit(other))
    .filter(({ code }) => code !== "not-a-pair")
    .map((finding) => ({
      bitIds: [one.id, other.id],
      severity: finding.severity,
      text: describeJointFinding(finding, showIn("both")),
    }));
}
