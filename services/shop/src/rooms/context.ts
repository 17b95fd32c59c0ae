import type { AnswerOnce } from "../http/answer-once.ts";
import type { Write } from "../http/write.ts";
import type { Sources } from "../plans/gather.ts";
import type { AllReads } from "./reads.ts";

/** What every room may use. */
export type Context = {
  readonly all: AllReads;
  /** Where plans find what they are computed from. */
  readonly sources: Sources;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};
