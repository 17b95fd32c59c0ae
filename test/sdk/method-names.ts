type Operation = { readonly operationId: string; readonly tags: readonly [string] };

/** `bits.create` names `createBit`, and a method may have the whole id as its name. */
export function namesOperation(name: string, { operationId, tags: [tag] }: Operation): boolean {
  const [resource = "", verb = ""] = name.split(".");
  const singular = tag === "people" ? "person" : tag.replace(/s$/, "");
  const noun = singular.charAt(0).toUpperCase() + singular.slice(1);
  const plural = tag.charAt(0).toUpperCase() + tag.slice(1);
  return resource === tag && [verb, `${verb}${noun}`, `${verb}${plural}`].includes(operationId);
}
