import type { Reporter, TestModule } from "vitest/node";

/** Says in the last lines of a run how many tests of the pages did not run, and what they need. */
export const sayWhatWasSkipped: Reporter = {
  onTestRunEnd(modules: readonly TestModule[]) {
    const skipped = modules
      .filter(({ moduleId }) => moduleId.includes("/test/browser/"))
      .flatMap(({ children }) => [...children.allTests("skipped")]);
    if (skipped.length > 0) {
      process.stdout.write(
        `${skipped.length} tests of the pages did not run: there is no Chromium here. Install Debian's package chromium, or name one in CHROMIUM_PATH.\n`,
      );
    }
  },
};
