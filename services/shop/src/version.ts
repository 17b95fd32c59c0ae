import { readFileSync } from "node:fs";

/** Version of the service, from its package. */
export const SERVICE_VERSION = versionIn(new URL("../package.json", import.meta.url));

function versionIn(file: URL): string {
  const { version } = JSON.parse(readFileSync(file, "utf8"));
  if (typeof version !== "string") throw new Error(`${file.pathname} names no version`);
  return version;
}
