import type { Delivered } from "./answer.ts";

/** One page as the service sends it. */
export type Page<Item> = { readonly data: readonly Item[]; readonly nextCursor: string | null };

/**
 * A list that fetches as it is read: `for await (const bit of client.bits.list())`. `await` gives its first page. Nothing is sent
 * before.
 */
export interface Pages<Item> extends AsyncIterable<Item>, PromiseLike<Page<Item>> {
  /** The same list, a whole page at a time. */
  byPage(): AsyncIterable<Page<Item>>;
  /** The first records as an array, at most so many. */
  all(options: { readonly limit: number }): Promise<Item[]>;
  /** The first page, with the status and headers it came with. */
  withResponse(): Promise<Delivered<Page<Item>>>;
}

/** A list from a function that reads the page at a cursor. Nothing is read until someone asks. */
export function pagesOf<Item>(
  read: (cursor: string | undefined) => Promise<Delivered<Page<Item>>>,
): Pages<Item> {
  async function* byPage() {
    let cursor: string | undefined;
    do {
      const { data: page }: Delivered<Page<Item>> = await read(cursor);
      yield page;
      // A page without records ends a list, whatever its cursor says: it would be asked for for ever.
      cursor = page.data.length === 0 ? undefined : (page.nextCursor ?? undefined);
    } while (cursor !== undefined);
  }
  async function* byItem() {
    for await (const { data } of byPage()) yield* data;
  }
  const withResponse = () => read(undefined);
  return {
    byPage,
    all: async ({ limit }) => {
      if (!Number.isSafeInteger(limit) || limit < 1)
        throw new TypeError("limit must be a whole number from 1 on.");
      const items: Item[] = [];
      for await (const item of byItem()) if (items.push(item) === limit) break;
      return items;
    },
    withResponse,
    // biome-ignore lint/suspicious/noThenProperty: awaiting a list gives its first page.
    then: (fulfilled, rejected) =>
      withResponse()
        .then(({ data }) => data)
        .then(fulfilled, rejected),
    [Symbol.asyncIterator]: byItem,
  };
}
