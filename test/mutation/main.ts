import { parseArgs } from "node:util";
import { type Constant, domainConstants } from "./constants.ts";
import { openMutants } from "./mutants.ts";
import { reasonToSurvive } from "./survivors.ts";

const { values: options } = parseArgs({
  options: { only: { type: "string", default: "" }, list: { type: "boolean", default: false } },
});

const constants = domainConstants().filter((constant) => shown(constant).includes(options.only));
if (options.list) for (const constant of constants) say(shown(constant));
else process.exitCode = (await mutate()) ? 0 : 1;

/** Whether every constant was noticed by a test, or may change by 1 % for a stated reason. */
async function mutate(): Promise<boolean> {
  const mutants = await openMutants(constants);
  const broken = await mutants.firstFailure(undefined);
  if (broken !== undefined) {
    say(`no constant changed, and a test fails: ${broken}`);
    await mutants.close();
    return false;
  }
  const counts = { killed: 0, excused: 0, survived: 0 };
  for (const constant of constants) {
    const reason = reasonToSurvive(constant);
    if ((await mutants.firstFailure(constant)) !== undefined) counts.killed += 1;
    else if (reason !== undefined) {
      counts.excused += 1;
      say(`survives, as it may: ${shown(constant)} (${reason})`);
    } else {
      counts.survived += 1;
      say(`SURVIVES: ${shown(constant)}`);
    }
  }
  await mutants.close();
  const { killed, excused, survived } = counts;
  say(`${constants.length} constants: ${killed} noticed, ${excused} may change, ${survived} not noticed`);
  return survived === 0;
}

function shown({ path, name, value }: Constant): string {
  return `${path} ${name} = ${value}`;
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
