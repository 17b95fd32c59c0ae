import type { Turns } from "../http/turns.ts";
import type { Answer } from "../store/store.ts";
import { type Choice, type JobTime, settledName } from "./choose.ts";
import type { JobBit } from "./facts.ts";
import type { Attempt, Piece } from "./planned.ts";
import type { JobRecord, NewJob } from "./schema.ts";
import type { JobGround } from "./work-schema.ts";

/** How a job is computed. */
export type Ways = {
  readonly answer: Answer;
  readonly turns: Turns;
  readonly at: string;
  /** Bits as they will be once what is decided is written. Default: as they are kept. */
  readonly bits?: ReadonlyMap<string, JobBit>;
};

/** A job to compute: kept already, or not yet. */
export type JobToCompute = NewJob & Partial<Pick<JobRecord, "id" | "state" | "work" | "made">>;

/** A cut of the list with what was found for it. */
export type ComputedCut = {
  readonly part: number;
  readonly cut: number;
  readonly name: string;
  readonly positionMm: number | undefined;
  readonly piece: Piece;
  readonly choice: Choice;
  /** The plan for this very part; undefined if there is no bit. */
  readonly own: Attempt | undefined;
  /** Whether it takes wood out for the cut of this number. */
  readonly isWaste: boolean;
  /** Digest of its plan, and what it rests on beside the cut; undefined if it is not planned. */
  readonly digest: string | undefined;
  readonly ground: JobGround | undefined;
};

/** When a job is made, and by whom. */
export function timeOf(job: JobToCompute, at: string): JobTime {
  const { id, personId, startsOn, wantedOn } = job;
  const isDated = startsOn !== undefined && wantedOn !== undefined;
  const days = isDated ? { from: startsOn, until: wantedOn } : undefined;
  // A job that is not kept yet has no reservations: none of the maker's other jobs is it.
  return { jobId: id ?? "", personId, days, at, settled: new Set(settledNames(job)) };
}

function settledNames({ state, work }: JobToCompute): string[] {
  if (state === undefined || state === "draft" || work === undefined) return [];
  return work.cuts.flatMap(({ bitId, routerId, mounting }) =>
    bitId === null || routerId === null || mounting === null ? [] : [settledName(bitId, routerId, mounting)],
  );
}
