/** One page as the service sends it. */
export type Page<Item> = { readonly data: readonly Item[]; readonly nextCursor: string | null };

/** A list that fetches as it is read: `for await (const bit of client.bits.list())`. */
export type Pages<Item> = AsyncIterable<Item> & {
  /** The same list, a whole page at a time. */
  readonly byPage: () => AsyncIterable<Page<Item>>;
};

/** A list from a function that reads the page at a cursor. Nothing is read until someone iterates. */
export function pagesOf<Item>(read: (cursor: string | undefined) => Promise<Page<Item>>): Pages<Item> {
  async function* byPage() {
    let cursor: string | undefined;
    do {
      const page: Page<Item> = await read(cursor);
      yield page;
      // A page without records ends a list, whatever its cursor says: it would be asked for for ever.
      cursor = page.data.length === 0 ? undefined : (page.nextCursor ?? undefined);
    } while (cursor !== undefined);
  }
  async function* byItem() {
    for await (const { data } of byPage()) yield* data;
  }
  return { byPage, [Symbol.asyncIterator]: byItem };
}
