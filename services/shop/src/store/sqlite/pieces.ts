/** Work that is done in pieces: between two of them it can wait, inside a transaction too. */
export type Pieces<Result = void> = Generator<void, Result>;

/** Does all pieces one after the other without a wait. */
export function atOnce<Result>(pieces: Pieces<Result>): Result {
  let next = pieces.next();
  while (next.done !== true) next = pieces.next();
  return next.value;
}
