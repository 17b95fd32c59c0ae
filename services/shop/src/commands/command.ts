import { resolve } from "node:path";
import type { Config } from "../config.ts";
import { folderOfCommand } from "../config.ts";

/** Something that whoever holds the machine may ask of the program. */
export type Command = {
  readonly name: string;
  /** What comes after the name. */
  readonly usage: string;
  readonly meaning: string;
  /** Options that take no value, and those that take one. */
  readonly flags?: readonly string[];
  readonly values?: readonly string[];
  readonly run: (asked: Asked, config: Config) => Promise<void>;
};

/** A command line, taken apart. */
export type Asked = {
  readonly words: readonly string[];
  readonly flags: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
};

/** Thrown when a command cannot be done. The message says why and what to do. */
export class CommandError extends Error {}

/** The one file that a command names, from where the command was given. */
export function fileNamed({ words }: Asked): string {
  const [file, ...more] = words;
  if (file === undefined || more.length > 0) throw new CommandError("Name one file.");
  return resolve(folderOfCommand(), file);
}

/** Prints what a command found, as JSON for programs and people. */
export function print(found: object): void {
  process.stdout.write(`${JSON.stringify(found, null, 2)}\n`);
}
