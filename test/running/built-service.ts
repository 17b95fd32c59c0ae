import { cpSync } from "node:fs";
import { join } from "node:path";
import { bundleService } from "../../services/shop/bundle/bundle.ts";

let bundled: Promise<string> | undefined;

/**
 * The service as it is built, made once for all tests of a thread: starting it from its sources takes five times as long.
 */
export function builtService(): Promise<string> {
  bundled ??= bundleService({ name: "test" });
  return bundled;
}

/** Puts the service as it is built into another folder, where `pnpm build` has it. Gives the path of what starts it. */
export async function copyBuiltService(dist: string): Promise<string> {
  const starter = await builtService();
  for (const ending of [".js", ".cjs", ".cache"])
    cpSync(starter.replace(/\.js$/, ending), join(dist, `main${ending}`));
  return join(dist, "main.js");
}
