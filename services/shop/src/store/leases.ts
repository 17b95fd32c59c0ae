/** What one process at a time may do, whichever it is. A lease that nobody gives back ends by itself. */
export type Leases = {
  /** Takes a lease, or holds it longer. False when another process has it. */
  readonly take: (name: string, forMs: number) => Promise<boolean>;
  readonly giveBack: (name: string) => Promise<void>;
};

/** So long nobody else begins when the process that holds a lease is gone. */
const HELD_FOR_MS = 30_000;
const RENEWED_EVERY_MS = HELD_FOR_MS / 3;

/** Does a job while this process alone may; gives undefined when another one does. */
export async function whileLeased<Value>(
  leases: Leases,
  name: string,
  job: () => Promise<Value>,
): Promise<{ readonly value: Value } | undefined> {
  if (!(await leases.take(name, HELD_FOR_MS))) return undefined;
  // One that cannot be renewed just now is held for a while yet, and what is written is checked when it is written.
  const renewal = setInterval(() => {
    leases.take(name, HELD_FOR_MS).catch(() => undefined);
  }, RENEWED_EVERY_MS).unref();
  try {
    return { value: await job() };
  } finally {
    clearInterval(renewal);
    await leases.giveBack(name).catch(() => undefined);
  }
}
