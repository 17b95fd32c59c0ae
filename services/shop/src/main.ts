import { CommandError } from "./commands/command.ts";
import { runCommand } from "./commands/commands.ts";
import { ConfigError } from "./config.ts";
import { DatabaseFileError } from "./store/database-file-error.ts";

/** Whatever this program writes, only its owner reads: records, logs of SQLite, copies, keys. */
const NOTHING_FOR_OTHERS = 0o077;

/** Errors that say in their message what is wrong and what to do. */
const FORESEEN = [ConfigError, CommandError, DatabaseFileError];

process.umask(NOTHING_FOR_OTHERS);
// Bundled, this is no module: it cannot wait here.
runCommand(process.argv.slice(2)).catch((error: unknown) => {
  process.stderr.write(`${reportOf(error)}\n`);
  process.exitCode = 1;
});

/** What was foreseen, or comes from the machine, needs a sentence, anything else its stack. */
function reportOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  // Errors of the file system and of SQLite have a code, and say what they are about.
  const isOfMachine = "code" in error && typeof error.code === "string";
  const isForeseen = isOfMachine || FORESEEN.some((each) => error instanceof each);
  return isForeseen ? error.message : String(error.stack);
}
