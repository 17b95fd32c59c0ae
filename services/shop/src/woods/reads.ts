import { WOODS, type Wood, woodById } from "@rimwise/domain";

export type WoodReads = {
  readonly find: (id: string) => Wood | undefined;
  readonly page: (afterId: string, most: number) => Promise<Wood[]>;
};

/** The domain's woods, by id. */
export function woodReads(): WoodReads {
  const byId = [...WOODS].sort((one, other) => (one.id < other.id ? -1 : 1));
  return {
    find: woodById,
    page: async (afterId, most) => byId.filter(({ id }) => id > afterId).slice(0, most),
  };
}
