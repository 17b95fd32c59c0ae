type Part = { readonly role: string; readonly teaches?: number; readonly learns?: number };

/** Who acts in the shop: its roles. */
export type Person = "head" | "ann" | "ben" | "cat" | "dan" | "mel";

export const PEOPLE: Readonly<Record<Person, Part>> = {
  head: { role: "manager" },
  ann: { role: "instructor", teaches: 0 },
  ben: { role: "instructor", teaches: 1 },
  cat: { role: "student", learns: 0 },
  dan: { role: "student", learns: 1 },
  mel: { role: "member" },
};

/** A program of the shop with an instructor's power, which belongs to no person. */
export const PROGRAM = "kiosk";
export type Actor = Person | typeof PROGRAM;

export const PERSONS: readonly Person[] = ["head", "ann", "ben", "cat", "dan", "mel"];
export const ACTORS: readonly Actor[] = [...PERSONS, PROGRAM];
export const LEARNERS: readonly Person[] = ["cat", "dan", "mel"];

/** Whether somebody is in charge of others. */
export function isStaff(actor: Actor): boolean {
  return actor === PROGRAM || PEOPLE[actor].role === "manager" || PEOPLE[actor].role === "instructor";
}

/** Whether somebody may act for a course: the head in every one, an instructor in their own. */
export function mayTeach(actor: Actor, course: number): boolean {
  if (actor === PROGRAM) return false;
  const { role, teaches } = PEOPLE[actor];
  return role === "manager" || teaches === course;
}
