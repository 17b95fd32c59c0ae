/**
 * The codes that have a meaning, in the order they are written in.
 * @example
 * codesIn({ run: "It may be run.", "do-not-run": "It must not be run." }) // → ["run", "do-not-run"]
 */
export function codesIn<Code extends string>(meanings: Readonly<Record<Code, string>>): Code[] {
  return Object.keys(meanings).filter((key): key is Code => Object.hasOwn(meanings, key));
}
