import { WOODS, type Wood, woodById, wordsIn } from "@rimwise/domain";

const BY_ID = [...WOODS].sort((one, other) => (one.id < other.id ? -1 : 1));

/** Every word that a wood may be asked for by. */
const WORDS = new Map(BY_ID.map((wood) => [wood.id, wordsOf(wood)]));

/** The domain's woods, asked for like records: they change only with the program. */
export const woods = {
  kind: { noun: "wood" },
  find: woodById,
  /** In order of id, those that have every word asked for, if only its beginning. */
  page: (afterId: string, most: number, asked = ""): Wood[] => {
    const wanted = wordsIn(asked);
    const found = BY_ID.filter(({ id }) => id > afterId && wanted.every((word) => hasWord(id, word)));
    return found.slice(0, most);
  },
};

function wordsOf(wood: Wood): string[] {
  const botanicalName = "botanicalName" in wood ? wood.botanicalName : "";
  return wordsIn(`${wood.id.replaceAll("-", " ")} ${wood.name} ${botanicalName}`);
}

function hasWord(id: string, word: string): boolean {
  return WORDS.get(id)?.some((each) => each.startsWith(word)) === true;
}
