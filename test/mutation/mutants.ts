import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import type { TestModule, Vite } from "vitest/node";
import { createVitest, type TestSpecification, type Vitest } from "vitest/node";
import { ROOT } from "../architecture/source-files.ts";
import type { Constant } from "./constants.ts";

export type Mutants = {
  /** The first test that fails with this constant 1 % larger, or with none changed; undefined if none does. */
  readonly firstFailure: (constant: Constant | undefined) => Promise<string | undefined>;
  readonly close: () => Promise<void>;
};

/** Read by the changed sources in the process that runs the tests. */
const CHOSEN = "RIMWISE_MUTANT";

const FACTOR = 1.01;

/** Tests that take seconds: asked last, about the constants nothing else noticed. */
const SLOW: readonly string[] = [
  "packages/domain/src/cut/passes.test.ts",
  "test/reference/outline-length.test.ts",
  "test/reference/outline-profile.test.ts",
  "test/reference/section.test.ts",
];

/** The properties in `test/properties` compare the domain with itself, so they notice no number. */
const FOLDERS = ["packages/domain/", "test/reference/"];

/**
 * The domain with a switch at each constant, built once: a mutant is a fresh worker given the switch to throw.
 * Nothing is written to the working tree.
 */
export async function openMutants(constants: readonly Constant[]): Promise<Mutants> {
  const vitest = await createVitest(
    "test",
    {
      config: fileURLToPath(new URL("../vitest.config.ts", import.meta.url)),
      watch: false,
      bail: 1,
      isolate: false,
      fileParallelism: false,
      reporters: [{}],
    },
    { plugins: [switches(constants)] },
  );
  const all = (await vitest.globTestSpecifications(FOLDERS)).filter(isOfTheDomain);
  const isSlow = ({ moduleId }: TestSpecification) => SLOW.includes(relative(ROOT, moduleId));
  const isTable = ({ moduleId }: TestSpecification) => moduleId.endsWith("/own-choices.test.ts");
  const rounds = [
    all.filter(isTable),
    all.filter((test) => !isTable(test) && !isSlow(test)),
    all.filter(isSlow),
  ].filter((tests) => tests.length > 0);
  return {
    firstFailure: async (constant) => {
      process.env[CHOSEN] = constant?.id ?? "";
      for (const tests of rounds) {
        const failure = await run(vitest, tests);
        if (failure !== undefined) return failure;
      }
      return undefined;
    },
    close: () => vitest.close(),
  };
}

function isOfTheDomain({ moduleId }: TestSpecification): boolean {
  const path = relative(ROOT, moduleId);
  return FOLDERS.some((folder) => path.startsWith(folder));
}

function switches(constants: readonly Constant[]): Vite.Plugin {
  return {
    name: "constant-switches",
    enforce: "pre",
    transform: (code, id) => {
      const path = relative(ROOT, id);
      const here = constants.filter((constant) => constant.path === path);
      return here.length === 0 ? undefined : { code: withSwitches(code, here), map: null };
    },
  };
}

function withSwitches(code: string, constants: readonly Constant[]): string {
  return constants
    .toSorted((a, b) => b.start - a.start)
    .reduce((text, { id, start, end, value }) => {
      const either = `(process.env.${CHOSEN} === ${JSON.stringify(id)} ? ${value * FACTOR} : ${value})`;
      return text.slice(0, start) + either + text.slice(end);
    }, code);
}

async function run(vitest: Vitest, tests: readonly TestSpecification[]): Promise<string | undefined> {
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications([...tests]);
  const failure = testModules.map(failureIn).find((found) => found !== undefined);
  if (failure !== undefined) return failure;
  // A worker that died has judged nothing.
  if (unhandledErrors.length > 0) throw new Error("the tests did not run", { cause: unhandledErrors[0] });
  return undefined;
}

function failureIn(module: TestModule): string | undefined {
  if (module.ok()) return undefined;
  const [test] = module.children.allTests("failed");
  return `${module.relativeModuleId}: ${test?.fullName ?? "does not load"}`;
}
