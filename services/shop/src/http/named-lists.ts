import Type, { type Static } from "typebox";
import { folded } from "../store/folded.ts";
import { ORDERING_LETTERS, ORDERS, type Order, type PageStart } from "../store/order.ts";

/** Query parameters of every list of records that have a name. */
export const NAMED_FILTERS = {
  q: Type.Optional(
    Type.String({
      minLength: 1,
      maxLength: 100,
      description: "Those with this in their name. Capitals and accents make no difference.",
    }),
  ),
  sort: Type.Optional(
    Type.Enum([...ORDERS], {
      type: "string",
      description:
        "What the list is in order of; with a minus, the other way round. Default: createdAt, oldest first.",
    }),
  ),
};

type NamedQuery = { readonly [Name in keyof typeof NAMED_FILTERS]?: Static<(typeof NAMED_FILTERS)[Name]> };

/** What a list is asked for by them. */
export function namedAsk({ q, sort }: NamedQuery) {
  return { q: q && folded(q), order: sort };
}

/** Between an id and the start of the name that a page ended with. */
const SEPARATOR = "~";

/** What the cursor after a row says. */
export function placeAfter(
  row: { readonly id: string; readonly name?: string },
  order: Order | undefined,
): string {
  if (order !== "name" && order !== "-name") return row.id;
  const name = [...folded(row.name ?? "")].slice(0, ORDERING_LETTERS).join("");
  return `${row.id}${SEPARATOR}${Buffer.from(name).toString("base64url")}`;
}

/** Where a page begins by what its cursor says. */
export function startAt(place: string): PageStart {
  const [id = "", name] = place.split(SEPARATOR);
  return name === undefined ? { id } : { id, name: Buffer.from(name, "base64url").toString() };
}
