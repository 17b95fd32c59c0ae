import type Sqlite from "better-sqlite3";
import { type AnswerNow, answersFrom } from "./answer.ts";
import { openToRead } from "./connection.ts";
import type { Readers } from "./transaction.ts";

/** Answers from a connection, and from another one beside while the first has a half-done transaction. */
export function answersBeside(
  file: string,
  usual: AnswerNow,
): { readonly answer: AnswerNow; readonly readers: Readers } {
  let beside: { readonly connection: Sqlite.Database; readonly answer: AnswerNow } | undefined;
  return {
    answer: (question) => (beside?.answer ?? usual)(question),
    readers: {
      moveBeside: () => {
        const connection = openToRead(file);
        beside = { connection, answer: answersFrom(connection) };
      },
      moveBack: () => {
        beside?.connection.close();
        beside = undefined;
      },
    },
  };
}
