import type { Model } from "../model.ts";
import type { Actor } from "../people.ts";
import type { Scene } from "../scene.ts";

/** A request that somebody is about to send, whose target was chosen when it was made ready. */
export type Sent = {
  readonly who: Actor;
  /** What it is called in the count of what happened. */
  readonly what: string;
  readonly method: "POST" | "PATCH";
  readonly url: string;
  readonly body: object;
  readonly headers?: Readonly<Record<string, string>>;
  /**
   * What may come of it by the model: `done`, or the code of a problem. More than one if the model cannot know, as of what only a
   * computed plan says.
   */
  readonly mayCome: (model: Model) => readonly string[];
  /** The model after it was done. */
  readonly apply: (model: Model, answer: AnswerBody) => void;
};

// biome-ignore lint/suspicious/noExplicitAny: what the service answers is what is being judged.
export type AnswerBody = any;

/** Makes a request ready; undefined if there is nothing yet that it could be about. */
export type Prepare = (model: Model, scene: Scene) => Sent | undefined;

/** One of these by a number: of no rows, none. */
export function pick<Row>(rows: readonly Row[], index: number): Row | undefined {
  return rows[index % Math.max(1, rows.length)];
}
