import type { FastifyRequest } from "fastify";
import { actorOf, callerOf, ownPersonOnly } from "../access/caller.ts";
import { bitKind } from "../bits/kind.ts";
import type { BitRecord } from "../bits/schema.ts";
import { collets } from "../collets/kind.ts";
import { withoutUndefined } from "../http/given.ts";
import { requireFound } from "../http/read-routes.ts";
import { policyInForce } from "../policy/in-force.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import { shopLayer } from "../shop-policy/reads.ts";
import { isChangeOf, newRecord } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Change } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { logUse } from "../uses/decide.ts";
import { requireHoldLeft } from "../uses/holds.ts";
import { useKind } from "../uses/kind.ts";
import { requirePlausible } from "../uses/plausible.ts";
import type { UseRecord } from "../uses/schema.ts";
import type { SetupMade, SetupMadeRecord } from "./act-schema.ts";
import { requireState } from "./decide.ts";
import { type JobBit, jobBit } from "./facts.ts";
import type { JobRecord } from "./schema.ts";
import type { JobSetupShown } from "./work-schema.ts";

/** What was logged of a set-up: its record, the changes, and the bit as it is after them. */
export type Finished = {
  readonly made: SetupMadeRecord;
  readonly changes: readonly Change[];
  readonly bit: JobBit;
};

/** A router has a few collets. */
const MOST_COLLETS = 1000;

const SECONDS_PER_MIN = 60;

/**
 * Logs a set-up of a job that has been made: one use of its bit for each wood. Throws a problem for a set-up the job has not, or has
 * made already.
 */
export function* finishedSetup(
  job: JobRecord,
  body: SetupMade,
  request: FastifyRequest,
  at: string,
): Question<Finished> {
  requireState(job, ["ready", "under-way"], "Set-ups are made once it is ready.");
  const setup = job.work.setups.find(({ id }) => id === body.setupId);
  if (setup === undefined) throw notValid([noSetup(job)]);
  const policy = policyInForce(yield* shopLayer(), job.policy ?? {});
  const before = requireFound(bitKind, setup.bitId, yield* jobBit(setup.bitId, at, policy));
  const ofRouter = yield* collets.page("", MOST_COLLETS, { routerId: setup.routerId });
  const own = ownPersonOnly(request);
  if (own !== undefined && body.outcomes.includes("came-loose")) yield* requireHoldLeft(own, at);
  const changes: Change[] = [];
  const uses: UseRecord[] = [];
  let record: BitRecord = before.record;
  for (const use of usesOf(job, setup, body, callerOf(request).personId, at)) {
    if (own !== undefined) requirePlausible(use, record, policy, at);
    const logged = logUse(use, record, ofRouter, actorOf(request), at, policy).changes;
    // A second use of the bit in one write begins from the first: of its changes the last counts.
    record = bitAmong(logged) ?? record;
    changes.push(...logged);
    uses.push(use);
  }
  return {
    made: madeOf(setup, body, uses, callerOf(request).keyId, at),
    changes,
    bit: { ...before, record, learned: { ...before.learned, uses: [...uses, ...before.learned.uses] } },
  };
}

function usesOf(
  { id, parts, woodId: usualWoodId }: JobRecord,
  { bitId, routerId, runs }: JobSetupShown,
  { outcomes, minutes = cuttingMinutes(runs) }: SetupMade,
  personId: string | undefined,
  at: string,
): UseRecord[] {
  const metresOf = new Map<string, number>();
  for (const { part, metres } of runs) {
    const woodId = parts[part - 1]?.woodId ?? usualWoodId;
    metresOf.set(woodId, (metresOf.get(woodId) ?? 0) + metres);
  }
  const all = [...metresOf.values()].reduce((sum, metres) => sum + metres, 0);
  return [...metresOf].map(([woodId, metres]) => {
    const share = all === 0 ? 1 : metres / all;
    const fields = {
      bitId,
      routerId,
      woodId,
      personId,
      doneAt: at,
      metres,
      minutes: minutes * share,
      outcomes,
      withoutLoanReason: `It was kept for job ${id}.`,
    };
    return newRecord(newId(useKind.idPrefix), withoutUndefined(fields), at);
  });
}

function cuttingMinutes(runs: JobSetupShown["runs"]): number {
  const seconds = runs.reduce((sum, { pieces, secondsPerPiece }) => sum + pieces * secondsPerPiece, 0);
  return seconds / SECONDS_PER_MIN;
}

function madeOf(
  { id, bitId, heightMm, rpm, runs }: JobSetupShown,
  { outcomes }: SetupMade,
  uses: readonly UseRecord[],
  by: string,
  at: string,
): SetupMadeRecord {
  return {
    setupId: id,
    at,
    by,
    runs: runs.map(({ part, cut, pass, fenceMm }) => ({ part, cut, pass, fenceMm })),
    outcomes,
    bitId,
    heightMm,
    rpm,
    useIds: uses.map((use) => use.id),
  };
}

function bitAmong(changes: readonly Change[]): BitRecord | undefined {
  for (const change of changes) {
    if (isChangeOf(change, bitKind) && change.action === "replace") return change.record;
  }
  return undefined;
}

function noSetup({ work }: JobRecord): FieldFault {
  const left = work.setups.map(({ id }) => id);
  const message = "The job has no such set-up to make: it was made, or planned again.";
  return {
    in: "body",
    pointer: "/setupId",
    message,
    accepted: left.length === 0 ? "none is left" : left.join(", "),
  };
}
