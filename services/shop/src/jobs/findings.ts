import {
  describeFinding,
  describeJointFinding,
  type EdgeOverJob,
  type PolicyLayer,
  pairFindings,
  showIn,
} from "@rimwise/domain";
import { bareBit } from "../bits/bare.ts";
import type { BitRecord } from "../bits/schema.ts";
import { describeInstead } from "../reservations/alike.ts";
import { whyElsewhere } from "../reservations/elsewhere.ts";
import type { JobTime } from "./choose.ts";
import type { ComputedCut } from "./computed.ts";
import type { JobBit } from "./facts.ts";
import type { JobFinding } from "./work-schema.ts";

/** What is known of a job once its cuts are planned. */
export type FoundOut = {
  readonly computed: readonly ComputedCut[];
  readonly edges: readonly EdgeOverJob[];
  readonly bits: ReadonlyMap<string, JobBit>;
  /** Bits that would do instead of one that is elsewhere, by the id of that one. */
  readonly instead: ReadonlyMap<string, readonly BitRecord[]>;
  readonly mended: ReadonlyMap<string, PolicyLayer>;
  readonly time: JobTime;
  /** How many pieces one run cuts, and of which part, by the set-up and the planned cut. */
  readonly runOf: (setupId: string, cut: number) => RunAt | undefined;
};

/** A run as people call it. */
export type RunAt = { readonly setup: number; readonly name: string; readonly pieces: number };

/** Everything that weighs on a job: what stops it first. */
export function jobFindings(found: FoundOut): JobFinding[] {
  const findings = [
    ...found.computed.flatMap(cutFindings),
    ...awayFindings(found),
    ...pairsApart(found),
    ...mishapFindings(found),
    ...found.edges.flatMap((edge) => edgeFindings(edge, found)),
  ];
  const order = ["refuse", "care", "note"];
  return findings.sort((one, other) => order.indexOf(one.severity) - order.indexOf(other.severity));
}

function cutFindings({ part, cut, name, choice, own }: ComputedCut): JobFinding[] {
  const place = { part, cut };
  if (own === undefined) {
    const [nearest] = choice.notTaken;
    const ofNearest = nearest === undefined ? "" : ` The nearest, ${nearest.bitId}: ${nearest.text}`;
    const why = choice.why === undefined ? ofNearest : ` ${choice.why}`;
    const text = `${name}, cut ${cut}: no bit of the rack makes it as it is wanted.${why}`;
    return [{ code: "no-bit", severity: "refuse", ...place, text }];
  }
  const bitId = own.candidate.bit.record.id;
  const { outcome } = own;
  if (outcome.kind === "refused") {
    const text = `${name}, cut ${cut}: it cannot be planned. ${outcome.text}`;
    return [{ code: "cut-not-possible", severity: "refuse", ...place, bitId, text }];
  }
  const { verdict, findings } = outcome.plan;
  if (verdict === "run") return [];
  const severity = verdict === "do-not-run" ? "refuse" : "care";
  const said = findings
    .filter((finding) => finding.severity === severity)
    .map((finding) => describeFinding(finding, showIn("both")));
  const code = verdict === "do-not-run" ? "cut-not-to-run" : "cut-with-care";
  const verb = verdict === "do-not-run" ? "must not be run" : "asks for care";
  return [{ code, severity, ...place, bitId, text: `${name}, cut ${cut}: it ${verb}. ${said.join(" ")}` }];
}

/** Bits that are elsewhere when the job is made. */
function awayFindings({ computed, bits, instead, time }: FoundOut): JobFinding[] {
  return takenBits(computed).flatMap((bitId) => {
    const bit = bits.get(bitId);
    const why = bit && whyElsewhere(bit, time);
    if (bit === undefined || why === undefined) return [];
    const isKept = bit.loan === undefined && bit.record.sentToSharpeningAt === undefined;
    const code = isKept ? "bit-kept" : "bit-away";
    const free = instead.get(bitId) ?? [];
    const insteadBitIds = free.map(({ id }) => id);
    const text = `${bit.record.name}: ${why} ${describeInstead(free)}`;
    return [{ code, severity: "care", bitId, ...(free.length > 0 && { insteadBitIds }), text }];
  });
}

/** Bits of the job that belong together and were sharpened apart. */
function pairsApart({ computed, bits }: FoundOut): JobFinding[] {
  const taken = takenBits(computed).flatMap((bitId) => bits.get(bitId)?.record ?? []);
  return taken.flatMap((one, index) =>
    taken.slice(index + 1).flatMap((other): JobFinding[] =>
      pairFindings(bareBit(one), bareBit(other))
        .filter(({ code }) => code === "sharpened-apart")
        .map((finding) => ({
          code: "pair-sharpened-apart",
          severity: "care",
          bitId: one.id,
          text: `${one.name} and ${other.name}: ${describeJointFinding(finding, showIn("both"))}`,
        })),
    ),
  );
}

function mishapFindings({ computed, bits, mended }: FoundOut): JobFinding[] {
  return takenBits(computed).flatMap((bitId) => {
    const layer = mended.get(bitId);
    const name = bits.get(bitId)?.record.name;
    if (layer === undefined || name === undefined) return [];
    const changes = [
      ...(layer.speedMaxRpm === undefined
        ? []
        : [`runs at ${showIn("both").rotation(layer.speedMaxRpm)} or slower`]),
      ...(layer.cutForceMaxN === undefined ? [] : ["is cut in lighter passes"]),
      ...(layer.finishBiteMm === undefined ? [] : ["has a lighter last pass"]),
    ];
    const text = `${name}: after what came out of an earlier set-up, what is left ${changes.join(", and ")}.`;
    return [{ code: "after-mishap", severity: "note", bitId, text }];
  });
}

function edgeFindings({ bitId, dueAt, dullAt }: EdgeOverJob, { bits, runOf }: FoundOut): JobFinding[] {
  const end = dullAt ?? dueAt;
  const name = bits.get(bitId)?.record.name;
  const run = end && runOf(end.setupId, end.cut);
  if (end === undefined || run === undefined || name === undefined) return [];
  const place = `after ${end.afterPieces} of ${run.pieces} × ${run.name} (set-up ${run.setup})`;
  return dullAt === undefined
    ? [
        {
          code: "edge-due",
          severity: "note",
          bitId,
          text: `${name} is due for sharpening ${place}.`,
        },
      ]
    : [
        {
          code: "edge-dull",
          severity: "care",
          bitId,
          text: `${name} is taken to be dull ${place}: have it sharpened before. An estimate: an edge that burns or pulls is dull sooner.`,
        },
      ];
}

function takenBits(computed: readonly ComputedCut[]): string[] {
  return [
    ...new Set(computed.flatMap(({ own }) => (own === undefined ? [] : [own.candidate.bit.record.id]))),
  ];
}
