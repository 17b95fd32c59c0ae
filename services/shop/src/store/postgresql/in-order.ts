/**
 * What statements of a pipeline come to that were sent one after the other. Throws what the first of them threw that failed: the
 * later ones only say that the transaction has failed.
 */
export async function inOrder<Results extends readonly unknown[]>(
  sent: {
    readonly [Place in keyof Results]: Promise<Results[Place]> | Results[Place];
  },
): Promise<Results> {
  const settled = await Promise.allSettled(sent);
  for (const each of settled) if (each.status === "rejected") throw each.reason;
  return Promise.all(sent);
}
