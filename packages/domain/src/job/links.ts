/** One thing before another, and why. */
export type Link<Why> = { readonly from: string; readonly to: string; readonly why: Why };

/** Whether following links leads back to where one began. */
export function closesCircle(links: readonly Link<unknown>[]): boolean {
  const waitingFor = new Map<string, number>();
  for (const { from, to } of links) {
    waitingFor.set(from, waitingFor.get(from) ?? 0);
    waitingFor.set(to, (waitingFor.get(to) ?? 0) + 1);
  }
  const ready = [...waitingFor].filter(([, count]) => count === 0).map(([id]) => id);
  for (const id of ready) {
    for (const { to } of links.filter(({ from }) => from === id)) {
      const left = (waitingFor.get(to) ?? 0) - 1;
      waitingFor.set(to, left);
      if (left === 0) ready.push(to);
    }
  }
  return ready.length < waitingFor.size;
}
