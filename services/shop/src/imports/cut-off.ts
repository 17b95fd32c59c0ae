import { problemFrom } from "../problems/from-error.ts";
import { Problem } from "../problems/problem.ts";

const INTERNAL = 500;

/**
 * What ended an import among its rows, as what is true of all of it: other problems speak of the last write alone. An error nobody
 * foresaw stays itself, and so does a refusal that was decided.
 */
export function cutOff(error: unknown, importId: string): unknown {
  const { code, status, headers } = problemFrom(error);
  if (status <= INTERNAL) return error;
  return new Problem(
    code,
    `The import ${importId} was cut off. The rows that were taken until then are kept, the others are not done. Look at the bits before you send it again, with isRepeat=true: rows with an id are safe to send, rows without one make their bits once more.`,
    { headers, cause: error },
  );
}
