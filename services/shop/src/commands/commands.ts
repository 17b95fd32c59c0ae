import { parseArgs } from "node:util";
import { readConfig } from "../config.ts";
import { backup } from "./backup.ts";
import { type Asked, type Command, CommandError } from "./command.ts";
import { move } from "./move.ts";
import { newManagerKey } from "./new-manager-key.ts";
import { newSealingKey } from "./new-sealing-key.ts";
import { restore } from "./restore.ts";
import { serve } from "./serve.ts";
import { verify } from "./verify.ts";

/** Every command, one line each. */
export const COMMANDS: readonly Command[] = [
  serve,
  backup,
  restore,
  verify,
  move,
  newManagerKey,
  newSealingKey,
];

/** Does what a command line asks; without one it serves. */
export async function runCommand(line: readonly string[]): Promise<void> {
  const [name = serve.name, ...rest] = line;
  if (name === "help" || name === "--help") return void process.stdout.write(helpText());
  const command = COMMANDS.find((each) => each.name === name);
  if (command === undefined) throw new CommandError(`There is no command ${name}.\n${helpText()}`);
  await command.run(askedOf(command, rest), readConfig());
}

function askedOf(command: Command, args: readonly string[]): Asked {
  const { flags = [], values = [] } = command;
  const options = Object.fromEntries([
    ...flags.map((name) => [name, { type: "boolean" as const }]),
    ...values.map((name) => [name, { type: "string" as const }]),
  ]);
  try {
    const parsed = parseArgs({ args: [...args], options, allowPositionals: true });
    const given = Object.entries(parsed.values);
    return {
      words: parsed.positionals,
      flags: new Set(given.flatMap(([name, value]) => (value === true ? [name] : []))),
      values: new Map(given.flatMap(([name, value]) => (typeof value === "string" ? [[name, value]] : []))),
    };
  } catch {
    throw new CommandError(`This is not how it is used: ${lineOf(command)}`);
  }
}

function helpText(): string {
  return `Commands; the settings are those of the service.\n${COMMANDS.map((each) => `  ${lineOf(each)}\n      ${each.meaning}\n`).join("")}`;
}

function lineOf({ name, usage }: Command): string {
  return `${name} ${usage}`.trimEnd();
}
