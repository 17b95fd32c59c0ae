import { posix } from "node:path";
import { importsOf, type SourceFile } from "./source-files.ts";

/**
 * Circles of imports among these files, imports of types included, each as "a → b → a". Every file that is in a circle is
 * named, by the shortest way from it back to itself unless an earlier circle names it already.
 */
export function importCycles(files: readonly SourceFile[]): string[] {
  const imports = new Map(
    files.map((file): [string, string[]] => [
      file.path,
      importsOf(file).flatMap(({ specifier }) =>
        specifier.startsWith(".") ? [posix.join(posix.dirname(file.path), specifier)] : [],
      ),
    ]),
  );
  const left = new Set(imports.keys());
  const cycles: string[] = [];
  for (const path of imports.keys()) {
    const round = left.has(path) ? shortestRound(path, imports) : undefined;
    if (round === undefined) continue;
    cycles.push(round.join(" → "));
    for (const each of round) left.delete(each);
  }
  return cycles;
}

/** The shortest way from a file back to itself; undefined if there is none. */
function shortestRound(start: string, imports: ReadonlyMap<string, readonly string[]>): string[] | undefined {
  const cameFrom = new Map<string, string>();
  const queue = [start];
  for (const path of queue) {
    for (const next of imports.get(path) ?? []) {
      if (next === start) return [...wayTo(path, cameFrom), start];
      if (cameFrom.has(next) || !imports.has(next)) continue;
      cameFrom.set(next, path);
      queue.push(next);
    }
  }
  return undefined;
}

function wayTo(path: string, cameFrom: ReadonlyMap<string, string>): string[] {
  const way = [path];
  for (let before = cameFrom.get(path); before !== undefined; before = cameFrom.get(before))
    way.unshift(before);
  return way;
}
