import Type, { type Static } from "typebox";

/** As many ids as one page can hold at most. */
const MOST_IDS = 200;
const ID = "[A-Za-z0-9_-]{1,60}";

/** Ids with commas between them. */
export const idList = Type.String({
  pattern: `^${ID}(,${ID}){0,${MOST_IDS - 1}}$`,
  description: `Ids, up to ${MOST_IDS}, with commas between them.`,
});

/** Query parameters that find records by what they are called: here, or in another program. */
export const IDENTITY_FILTERS = {
  ids: Type.Optional(
    Type.String({
      pattern: `^${ID}(,${ID}){0,${MOST_IDS - 1}}$`,
      description: `Those with these ids: up to ${MOST_IDS}, with commas between them. Ids of nothing are passed over.`,
    }),
  ),
  externalId: Type.Optional(
    Type.String({ minLength: 1, maxLength: 100, description: "Those that another program calls so." }),
  ),
};

type IdentityQuery = {
  readonly [Name in keyof typeof IDENTITY_FILTERS]?: Static<(typeof IDENTITY_FILTERS)[Name]>;
};

/** What a list is narrowed to by them. */
export function identityOf({ ids, externalId }: IdentityQuery) {
  return {
    ...(ids !== undefined && { id: { list: ids.split(",") } }),
    ...(externalId !== undefined && { externalId }),
  };
}
