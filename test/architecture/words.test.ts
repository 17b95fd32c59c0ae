import { describe, expect, it } from "vitest";
import { type SourceFile, sourceFiles } from "./source-files.ts";

/** Spelt with a gap, so that this file does not find itself. */
const LEFT_BEHIND: readonly RegExp[] = [
  /\b(TO DO|FIX ME|XX X|HA CK)\b/,
  /\.(on ly|sk ip|to do)\(/,
  /@ts-(ig nore|no check)\b/,
  /\bas\s(an y|unk nown\sas)\b/,
].map(({ source }) => new RegExp(source.replaceAll(" ", "")));

describe("nothing is left behind", () => {
  it("in code, documents or SQL", () => {
    const files = sourceFiles([".ts", ".md", ".sql", ".yaml", ".json", ".jsonc"]);
    expect(files.flatMap(leftBehind)).toEqual([]);
  });

  it.each([
    `// TO${"DO"}: later`,
    `// FIX${"ME"} soon`,
    `it.sk${"ip"}("x", () => {})`,
    `describe.on${"ly"}("x", () => {})`,
    `it.each([1]).on${"ly"}("x", () => {})`,
    `it.to${"do"}("x")`,
    `// @ts-ig${"nore"}`,
    `const x = y as an${"y"};`,
    `const x = y as unk${"nown"} as Bit;`,
  ])("%s is found", (text) => {
    expect(leftBehind({ path: "x.ts", text })).toHaveLength(1);
  });
});

function leftBehind({ path, text }: SourceFile): string[] {
  return text
    .split("\n")
    .flatMap((line, index) =>
      LEFT_BEHIND.some((word) => word.test(line)) ? [`${path}:${index + 1} ${line.trim()}`] : [],
    );
}
