import { openShop, type Shop } from "./shop.ts";

/** Another service on the database of a shop, as a second process has it: nothing between them but the database. */
export async function secondProcess(
  { file, signingKeys, managerKey }: Pick<Shop, "file" | "signingKeys" | "managerKey">,
  settings: Record<string, string> = {},
  now?: () => Date,
): Promise<Shop> {
  const own = { RIMWISE_DATABASE: file, RIMWISE_SIGNING_KEYS: signingKeys, RIMWISE_FIRST_KEY: managerKey };
  return openShop({ ...own, ...settings }, now);
}
