import type { Question } from "../store/query.ts";
import type { JobChanges } from "./act-schema.ts";
import { groundsChanged } from "./grounds.ts";
import type { JobRecord, JobSummary } from "./schema.ts";

/** What a job rests on that has changed since it was computed. One that has ended rests on nothing any more. */
export function* jobChanges(record: JobRecord, at: string): Question<JobChanges> {
  const isOpen = record.state !== "done" && record.state !== "dropped";
  const changed = isOpen ? yield* groundsChanged(record, at) : [];
  return { jobId: record.id, isCurrent: changed.length === 0, changed };
}

/** A job as lists show it. */
export function summaryOf({ parts, work, made, ...kept }: JobRecord): JobSummary {
  const { id, name, externalId, personId, startsOn, wantedOn, state, createdAt, updatedAt, version } = kept;
  return {
    id,
    name,
    ...(externalId !== undefined && { externalId }),
    ...(personId !== undefined && { personId }),
    ...(startsOn !== undefined && { startsOn }),
    ...(wantedOn !== undefined && { wantedOn }),
    state,
    verdict: work.verdict,
    parts: parts.length,
    pieces: parts.reduce((sum, { count, spares = 0 }) => sum + count + spares, 0),
    setups: work.setups.length,
    made: made.length,
    minutes: work.minutes.total,
    createdAt,
    updatedAt,
    version,
  };
}
