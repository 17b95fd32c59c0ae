import { rename, writeFile } from "node:fs/promises";
import { threadId } from "node:worker_threads";

/** Writes a file in one step: whoever reads it meanwhile, or writes it too, has a whole one. */
export async function replaceFile(file: string, text: string): Promise<void> {
  const fresh = `${file}-${process.pid}-${threadId}`;
  await writeFile(fresh, text);
  await rename(fresh, file);
}
