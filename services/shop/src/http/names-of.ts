/** The names of a record's own fields, as its type says them. */
export function namesOf<Name extends string>(named: Readonly<Record<Name, unknown>>): Name[] {
  const isName = (name: string): name is Name => Object.hasOwn(named, name);
  return Object.keys(named).filter(isName);
}
