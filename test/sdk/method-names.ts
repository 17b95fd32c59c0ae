type Operation = { readonly operationId: string; readonly tags: readonly [string] };

/** What a resource is about, where that is not its name without the "s". */
const NOUNS: Readonly<Record<string, string>> = { people: "person", stock: "bit", signing: "signing" };

/** `bits.create` names `createBit`, `bits.label` `getBitLabel`, and a method may have the whole id as its name. */
export function namesOperation(name: string, { operationId, tags: [tag] }: Operation): boolean {
  const [resource = "", verb = ""] = name.split(".");
  if (resource !== tag) return false;
  const said = (NOUNS[tag] ?? tag.replace(/s$/, "")).toLowerCase();
  const without = [said, `${said}s`, tag.toLowerCase()].flatMap((noun) =>
    [...operationId.toLowerCase().matchAll(new RegExp(noun, "g"))].map(
      ({ index }) => operationId.slice(0, index) + operationId.slice(index + noun.length),
    ),
  );
  return [operationId, ...without, ...without.map((each) => each.replace(/^get/, ""))].some(
    (each) => each.toLowerCase() === verb.toLowerCase(),
  );
}
