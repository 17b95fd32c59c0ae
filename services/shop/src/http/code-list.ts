import { codesIn } from "@rimwise/domain";
import Type from "typebox";

/** A closed list of codes: a component of the API description, and a table on the page of codes. */
export type CodeList<Code extends string = string> = {
  readonly name: string;
  readonly title: string;
  /** What each code means in general, as a sentence. */
  readonly meanings: Readonly<Record<Code, string>>;
};

/** A list of codes with its component: answers hold a reference to it. */
export function defineCodes<Code extends string>({ name, title, meanings }: CodeList<Code>) {
  const schema = Type.Enum(codesIn(meanings), {
    $id: name,
    type: "string",
    description: `${title}. Stable, for programs; later versions may add some.`,
  });
  return { name, title, meanings, schema };
}
