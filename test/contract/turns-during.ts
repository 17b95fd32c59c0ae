/** How often others had a turn of the event loop while something ran. */
export async function turnsDuring(work: () => Promise<unknown>): Promise<number> {
  let turns = 0;
  let isOver = false;
  const count = () => {
    turns += 1;
    if (!isOver) setImmediate(count);
  };
  setImmediate(count);
  await work();
  isOver = true;
  return turns;
}
