import {
  type Bit,
  dialSpeeds,
  type PastUse,
  type Policy,
  type Router,
  type SpeedTrial,
} from "@rimwise/domain";
import { bareBit } from "../bits/bare.ts";
import { bits } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import { daysAfter } from "../http/moment.ts";
import { routers } from "../routers/kind.ts";
import type { RouterRecord } from "../routers/schema.ts";
import { runOuts } from "../run-out-readings/kind.ts";
import type { RunOutRecord } from "../run-out-readings/schema.ts";
import { trials } from "../speed-trials/kind.ts";
import type { TrialRecord } from "../speed-trials/schema.ts";
import type { Question } from "../store/query.ts";
import { usableRouter } from "../usable-routers/reads.ts";
import { uses } from "../uses/kind.ts";
import type { UseOutcome, UseRecord } from "../uses/schema.ts";

/** What the shop has learned about one bit, in every router. */
export type Learned = {
  readonly trials: readonly TrialRecord[];
  readonly runOuts: readonly RunOutRecord[];
  readonly uses: readonly UseRecord[];
};

/** A kept bit with what was learned about it. */
export type KnownBit = { readonly record: BitRecord; readonly learned: Learned };

/** A kept router, and as it can be used now. */
export type KnownRouter = { readonly record: RouterRecord; readonly usable: Router };

/** A guided trial is a dozen speeds: this is every trial a bit will ever see. */
const MOST_TRIALS = 10_000;
const MOST_RUN_OUTS = 200;
/** What happened longer ago than this many uses warns no more. Ours. */
const USES_THAT_WARN = 50;

/** What a sharp edge puts right. */
const BLUNT: readonly UseOutcome[] = ["scorched", "tore-out"];

/** A bit with what counts of what was learned about it at a moment; undefined when there is no such bit. */
export function* knownBit(id: string, at: string, policy: Policy): Question<KnownBit | undefined> {
  const record = yield* bits.find(id);
  return record && { record, learned: yield* learnedOf(id, at, policy) };
}

/** A router as it can be used at a moment; undefined when there is no such router. */
export function* knownRouter(id: string, at: string, policy: Policy): Question<KnownRouter | undefined> {
  const record = yield* routers.find(id);
  return record && { record, usable: yield* usableRouter(record, at, policy) };
}

function* learnedOf(bitId: string, at: string, policy: Policy): Question<Learned> {
  const readings = yield* runOuts.newest(MOST_RUN_OUTS, { bitId });
  return {
    trials: yield* trials.page("", MOST_TRIALS, { bitId }),
    runOuts: readings.filter((each) => isReliedOn(each, at, policy)),
    uses: yield* uses.newest(USES_THAT_WARN, { bitId }),
  };
}

/** A reading is relied on for a time; one that is worse than what is taken without any stays, because age mends nothing. */
function isReliedOn({ readAt, runOutMm }: RunOutRecord, at: string, policy: Policy): boolean {
  const oldest = daysAfter(at, -policy.runOutReadingMaxAgeDays);
  return readAt >= oldest || runOutMm > policy.runOutAssumedMm;
}

/** A kept bit for a plan in one router: the run-out last measured there beats the one in its record. */
export function bitIn(routerId: string | undefined, record: BitRecord, learned: Learned): Bit {
  const reading = lastRunOut(routerId, learned);
  return { ...bareBit(record), ...(reading && { runOutMm: reading.runOutMm }) };
}

/** Until when the run-out that a bit is planned with in a router counts; undefined when none was read, or it stays. */
export function runOutUntil(routerId: string, learned: Learned, policy: Policy): string | undefined {
  const reading = lastRunOut(routerId, learned);
  if (reading === undefined || reading.runOutMm > policy.runOutAssumedMm) return undefined;
  return daysAfter(reading.readAt, policy.runOutReadingMaxAgeDays);
}

function lastRunOut(routerId: string | undefined, { runOuts }: Learned): RunOutRecord | undefined {
  return runOuts
    .filter((each) => each.routerId === routerId)
    .reduce<RunOutRecord | undefined>(
      (last, each) => (last && last.readAt >= each.readAt ? last : each),
      undefined,
    );
}

/**
 * The trials that count, as the domain takes them. A dial that was read again since a trial says another speed of its
 * mark: the slower of the two counts.
 */
export function trialsFor(
  router: KnownRouter | undefined,
  { trials }: Learned,
  policy: Policy,
): SpeedTrial[] {
  const speeds = router === undefined ? [] : dialSpeeds(router.usable, policy);
  return trials
    .filter(({ setAside }) => setAside === undefined)
    .map(({ rpm, mark, outcome, routerId }) => {
      const sameRouter = routerId === router?.record.id;
      const now = sameRouter && mark !== undefined ? speeds.find((speed) => speed.mark === mark) : undefined;
      return { rpm: Math.min(rpm, now?.rpm ?? rpm), outcome, isSameRouter: sameRouter };
    });
}

/** What happened in earlier cuts. Not those that a sharpening since then has put right. */
export function historyFor(
  routerId: string | undefined,
  woodId: string,
  { sharpenedAt = "" }: BitRecord,
  { uses }: Learned,
): PastUse[] {
  return uses.flatMap(({ outcomes, routerId: where, woodId: what, doneAt }) =>
    outcomes
      .filter((outcome) => outcome !== "fine" && (doneAt > sharpenedAt || !BLUNT.includes(outcome)))
      .map((outcome) => ({ outcome, isSameRouter: where === routerId, sameWood: what === woodId })),
  );
}
