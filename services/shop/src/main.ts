import { CommandError } from "./commands/command.ts";
import { runCommand } from "./commands/commands.ts";
import { ConfigError } from "./config.ts";
import { DatabaseFileError } from "./store/database-file-error.ts";

/** Whatever this program writes, only its owner reads: records, logs of SQLite, copies, keys. */
const NOTHING_FOR_OTHERS = 0o077;

/** Errors that say in their message what is wrong and what to do. */
const FORESEEN = [ConfigError, CommandError, DatabaseFileError];

process.umask(NOTHING_FOR_OTHERS);
try {
  await runCommand(process.argv.slice(2));
} catch (error) {
  process.stderr.write(`${reportOf(error)}\n`);
  process.exitCode = 1;
}

/** What was foreseen needs a sentence, anything else its stack. */
function reportOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  return FORESEEN.some((each) => error instanceof each) ? error.message : String(error.stack);
}
