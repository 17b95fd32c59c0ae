/** A queue that gives the least first: a binary heap. `isLess` must be a strict order. */
export type PriorityQueue<Item> = {
  readonly add: (item: Item) => void;
  readonly takeLeast: () => Item | undefined;
};

export function priorityQueue<Item>(isLess: (one: Item, other: Item) => boolean): PriorityQueue<Item> {
  const heap: Item[] = [];
  return {
    add: (item) => {
      let place = heap.length;
      for (; place > 0; ) {
        const parent = (place - 1) >> 1;
        const above = heap[parent];
        if (above === undefined || !isLess(item, above)) break;
        heap[place] = above;
        place = parent;
      }
      heap[place] = item;
    },
    takeLeast: () => {
      const [least] = heap;
      const item = heap.pop();
      if (item === undefined || heap.length === 0) return least;
      let place = 0;
      for (let child = 1; child < heap.length; child = 2 * place + 1) {
        const [left, right] = [heap[child], heap[child + 1]];
        const isRight = left !== undefined && right !== undefined && isLess(right, left);
        const below = isRight ? right : left;
        if (below === undefined || !isLess(below, item)) break;
        heap[place] = below;
        place = isRight ? child + 1 : child;
      }
      heap[place] = item;
      return least;
    },
  };
}
