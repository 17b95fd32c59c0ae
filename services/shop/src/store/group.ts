import { setImmediate as nextTurn } from "node:timers/promises";

/** How one item of a group ended: with a value, or with an error that is its own. */
export type Settled<Value> = { readonly value: Value } | { readonly error: unknown };

type Waiting<Item, Value> = {
  readonly item: Item;
  readonly resolve: (value: Value) => void;
  readonly reject: (error: unknown) => void;
};

/** Items in one transaction: enough that the disk's flush is shared, few enough that nobody waits long. */
const MOST_IN_A_GROUP = 100;

/**
 * Turns a function that settles many items at once into one that takes a single item. Items that arrive in the
 * same turn of the event loop, or while a group is being written, go together into the next group. One group is
 * written at a time.
 */
export function grouped<Item, Value>(
  settleAll: (items: readonly Item[]) => Promise<readonly Settled<Value>[]>,
): (item: Item) => Promise<Value> {
  const queue: Waiting<Item, Value>[] = [];
  let isWriting = false;

  async function writeGroups(): Promise<void> {
    await nextTurn();
    while (queue.length > 0) {
      await writeGroup(queue.splice(0, MOST_IN_A_GROUP));
      if (queue.length > 0) await nextTurn();
    }
    isWriting = false;
  }

  async function writeGroup(group: readonly Waiting<Item, Value>[]): Promise<void> {
    try {
      const results = await settleAll(group.map(({ item }) => item));
      for (const [index, { resolve, reject }] of group.entries()) {
        const result = results[index];
        if (result === undefined) reject(new Error("an item was left unsettled"));
        else if ("error" in result) reject(result.error);
        else resolve(result.value);
      }
    } catch (error) {
      // The transaction as a whole did not reach the disk, so nothing in it may be acknowledged.
      for (const { reject } of group) reject(error);
    }
  }

  return (item) =>
    new Promise((resolve, reject) => {
      queue.push({ item, resolve, reject });
      if (isWriting) return;
      isWriting = true;
      void writeGroups();
    });
}
