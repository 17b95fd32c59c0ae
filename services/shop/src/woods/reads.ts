import { WOODS, type Wood, woodById } from "@rimwise/domain";

const BY_ID = [...WOODS].sort((one, other) => (one.id < other.id ? -1 : 1));

/** The domain's woods, asked for like records: they change only with the program. */
export const woods = {
  kind: { noun: "wood" },
  find: woodById,
  page: (afterId: string, most: number): Wood[] => BY_ID.filter(({ id }) => id > afterId).slice(0, most),
};
