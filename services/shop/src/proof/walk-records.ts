import { events, type KeptEvent } from "../events/reads.ts";
import { turns } from "../http/turns.ts";
import type { Answer } from "../store/store.ts";
import type { RecordProof } from "./records.ts";
import type { BreakReason } from "./schema.ts";

type Sources = { readonly answer: Answer; readonly records?: RecordProof };

/** How far the chain has been followed. */
export type Link = Pick<KeptEvent, "sequence" | "hash" | "latestAt">;
export type Broken = { readonly sequence: number; readonly reason: BreakReason };
export type Progress = { readonly link: Link; readonly checkpoints: number; readonly broken?: Broken };

/** Holds the records that these events are the last about against them. */
export async function withRecords(
  firstSequence: number,
  progress: Progress,
  { answer, records }: Sources,
): Promise<Progress> {
  if (progress.broken !== undefined || records === undefined) return progress;
  const last = await answer(events.lastOfTheirs(firstSequence, progress.link.sequence));
  const pause = turns();
  for (const { sequence, subjectId } of last) {
    const reason = await answer(records.breakOf(subjectId));
    if (reason !== undefined) return { ...progress, broken: { sequence, reason } };
    await pause();
  }
  return progress;
}

/** Looks for records that no event is about. */
export async function withoutPlanted(progress: Progress, { answer, records }: Sources): Promise<Progress> {
  if (records === undefined) return progress;
  const pause = turns();
  for (const kind of records.kinds) {
    for (let afterId: string | undefined = ""; afterId !== undefined; ) {
      const found: readonly { id: string; isStated: boolean }[] = await answer(
        records.planted(kind, afterId),
      );
      if (found.some(({ isStated }) => !isStated)) {
        const sequence = Math.max(progress.link.sequence, 1);
        return { ...progress, broken: { sequence, reason: "record-planted" } };
      }
      afterId = found.at(-1)?.id;
      await pause();
    }
  }
  return progress;
}
