/** How one order of a group ended: with a value, or with an error that is its own. */
export type Settled<Value> = { readonly value: Value } | { readonly error: unknown };

type Waiting<Order, Value> = {
  readonly order: Order;
  readonly resolve: (value: Value) => void;
  readonly reject: (error: unknown) => void;
};

/** Orders in one transaction: enough that the disk's flush is shared, few enough that nobody waits long. */
const MOST_IN_A_GROUP = 100;

/**
 * Turns a function that settles many orders at once into one that takes a single order. Orders that arrive in the
 * same turn of the event loop, or while a group is being written, go together into the next group.
 */
export function grouped<Order, Value>(
  settleAll: (orders: readonly Order[]) => readonly Settled<Value>[],
): (order: Order) => Promise<Value> {
  const queue: Waiting<Order, Value>[] = [];

  function writeGroup(): void {
    const group = queue.splice(0, MOST_IN_A_GROUP);
    if (queue.length > 0) setImmediate(writeGroup);
    try {
      const results = settleAll(group.map(({ order }) => order));
      for (const [index, { resolve, reject }] of group.entries()) {
        const result = results[index];
        if (result === undefined) reject(new Error("an order was left unsettled"));
        else if ("error" in result) reject(result.error);
        else resolve(result.value);
      }
    } catch (error) {
      // The transaction as a whole did not reach the disk, so nothing in it may be acknowledged.
      for (const { reject } of group) reject(error);
    }
  }

  return (order) =>
    new Promise((resolve, reject) => {
      queue.push({ order, resolve, reject });
      if (queue.length === 1) setImmediate(writeGroup);
    });
}
