import { expect, it } from "vitest";
import { type SourceFile, sourceFiles } from "./source-files.ts";

/** Past this a file is split, or says in its first comment why it is long. */
const MOST_LINES = 250;

it("no file is long without saying why", () => {
  const files = sourceFiles([".ts"]).filter(({ path }) => !path.includes("/generated/"));
  expect(files.filter(isLongWithoutReason).map(({ path }) => path)).toEqual([]);
});

it("a long file is found, unless its first comment says why", () => {
  const lines = "const x = 1;\n".repeat(MOST_LINES + 1);
  expect(isLongWithoutReason({ path: "x.ts", text: lines })).toBe(true);
  expect(isLongWithoutReason({ path: "x.ts", text: `// The forms.\n${lines}` })).toBe(true);
  expect(
    isLongWithoutReason({ path: "x.ts", text: `// Long because a table is read as one.\n${lines}` }),
  ).toBe(false);
  expect(isLongWithoutReason({ path: "x.ts", text: "const x = 1;\n".repeat(MOST_LINES) })).toBe(false);
});

function isLongWithoutReason({ text }: SourceFile): boolean {
  const lineCount = text.trimEnd().split("\n").length;
  const firstComment = /^(?:\/\/.*\n)+|^\/\*[\s\S]*?\*\//.exec(text)?.[0] ?? "";
  return lineCount > MOST_LINES && !/\blong\b/i.test(firstComment);
}
