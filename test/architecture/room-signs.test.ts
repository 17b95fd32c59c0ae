import { existsSync } from "node:fs";
import { join, posix } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT, type SourceFile, sourceFiles } from "./source-files.ts";

const SIGN = "README.md";
/** Longer than this, and the next person does not read it. */
const MOST_LINES = 3;

const signs = new Map(
  sourceFiles([SIGN]).map((file): [string, SourceFile] => [posix.dirname(file.path), file]),
);
const rooms = [
  ...new Set(
    sourceFiles([".ts", ".sql"])
      .map(({ path }) => posix.dirname(path))
      .filter((folder) => folder !== "."),
  ),
];
const fileNames = new Set(sourceFiles([""]).map(({ path }) => posix.basename(path)));

describe("every folder with source has a room sign", () => {
  it.each(rooms)("%s", (room) => {
    const sign = signs.get(room);
    expect(sign, `${room}/${SIGN}`).toBeDefined();
    const lines = sign?.text.trim().split("\n") ?? [];
    expect(lines.length).toBeGreaterThanOrEqual(1);
    expect(lines.length).toBeLessThanOrEqual(MOST_LINES);
    expect(sign?.text.trim()).not.toBe("");
    for (const path of pathsNamed(sign?.text ?? "")) {
      expect(isThere(room, path), `${path}, named in ${room}/${SIGN}`).toBe(true);
    }
  });
});

it("a path is found in a text that names one", () => {
  expect(
    pathsNamed("Run `pnpm generate`; see `define.ts`, `store/commit.ts` and `reads/`, not `client.bits`."),
  ).toEqual(["define.ts", "store/commit.ts", "reads/"]);
});

/** From the room, or from the root; a bare file name may be that of a kind of file found in many rooms. */
function isThere(room: string, path: string): boolean {
  if (!path.includes("/") && fileNames.has(path)) return true;
  return [join(ROOT, room, path), join(ROOT, path)].some((place) => existsSync(place));
}

/** What stands in backticks and looks like a path: a known ending, or a slash and no space. */
function pathsNamed(text: string): string[] {
  return [...text.matchAll(/`([^`\s<>*{}]+)`/g)]
    .flatMap(([, quoted]) => quoted ?? [])
    .filter(
      (quoted) => /\.(ts|md|json|sql|sh)$/.test(quoted) || (quoted.includes("/") && !/^[/@]/.test(quoted)),
    );
}
