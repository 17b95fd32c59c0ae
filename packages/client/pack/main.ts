import { mkdirSync, renameSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { packClient } from "./pack.ts";

// `tsx pack/main.ts FILE` packs the client into that file.
const [file = "dist/client.tgz"] = process.argv.slice(2);
const target = resolve(file);
mkdirSync(dirname(target), { recursive: true });
renameSync(packClient(dirname(target)), target);
