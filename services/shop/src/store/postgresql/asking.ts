import type { PoolClient } from "pg";
import type { Question, Step } from "../query.ts";
import type { RawRow } from "../readers.ts";
import { type Prepared, preparedFor, rowsOfPrepared } from "./answer.ts";

/** Short answers are asked for again and again by the changes of one transaction. */
const MOST_ROWS = 4;
const MOST_ANSWERS = 1000;

export type Asking = {
  readonly ask: <Result>(question: Question<Result>) => Promise<Result>;
  /** Forgets what was answered from these tables. */
  readonly forget: (tables: ReadonlySet<string>) => void;
  readonly forgetAll: () => void;
};

/**
 * Asks inside a transaction that writes in sets. Before a question about a table that rows wait for, `settle` has them written; short
 * answers are remembered until one of their tables is written.
 */
export function askingOn(
  client: PoolClient,
  waitingFor: () => Iterable<string>,
  settle: () => Promise<void>,
): Asking {
  const answers = new Map<Prepared, Map<string, readonly RawRow[]>>();
  let remembered = 0;

  async function rowsOf({ query, values }: Step): Promise<readonly RawRow[]> {
    const prepared = preparedFor(query);
    for (const table of waitingFor()) {
      if (asksOf(prepared, table)) {
        await settle();
        break;
      }
    }
    const key = JSON.stringify(values);
    const known = answers.get(prepared)?.get(key);
    if (known !== undefined) return known;
    const rows = await rowsOfPrepared(client, prepared, values);
    if (rows.length <= MOST_ROWS && remembered < MOST_ANSWERS) {
      const ofQuery = answers.get(prepared) ?? new Map<string, readonly RawRow[]>();
      answers.set(prepared, ofQuery.set(key, rows));
      remembered += 1;
    }
    return rows;
  }

  function forgetAll(): void {
    answers.clear();
    remembered = 0;
  }

  return {
    ask: async (question) => {
      let step = question.next();
      while (step.done !== true) step = question.next(await rowsOf(step.value));
      return step.value;
    },
    forget: (tables) => {
      for (const prepared of answers.keys())
        if ([...tables].some((table) => asksOf(prepared, table))) answers.delete(prepared);
    },
    forgetAll,
  };
}

/** Whether a statement may read a table: its name stands in quotes wherever a query names it. */
function asksOf({ text }: Prepared, table: string): boolean {
  return text.includes(`"${table}"`);
}
