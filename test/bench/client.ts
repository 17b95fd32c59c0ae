import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { packedClient } from "../sdk/packed.ts";
import { startServer } from "./processes.ts";

/** Pairs that alternate: a machine that slows down slows both. */
const PAIRS = 41;
const CALLS_OF_A_TURN = 400;
const IMPORTS = 25;
const CALL_AT_MOST = 1.3;
const IMPORT_AT_MOST = 1.5;

/** A record about as long as a bit's. */
const RECORD = JSON.stringify({
  id: "bit_1",
  version: 1,
  name: "Raised panel, 89 mm",
  form: { kind: "panel-raising", diameterMm: 88.9, pilotDiameterMm: 22, profileHeightMm: 12, face: "cove" },
  notes: "Upper drawer. ".repeat(40),
});

const SERVER = `
  import { createServer } from "node:http";
  const headers = { "content-type": "application/json", etag: '"1"', "x-request-id": "r1" };
  createServer((request, response) => response.writeHead(200, headers).end(${JSON.stringify(RECORD)}))
    .listen(Number(process.env.RIMWISE_PORT), "127.0.0.1");
`;

/** Prints the ratio of each pair: processor time of so many calls, and of as many times bare fetch and JSON. */
const CALLS = `
  import { createClient } from "@rimwise/client";
  const url = process.env.BENCH_URL;
  const client = createClient({ baseUrl: url, key: "bench" });
  const headers = { authorization: "Bearer bench", accept: "application/json" };
  const turns = {
    client: () => client.bits.get("bit_1"),
    fetch: async () => (await fetch(url + "/v1/bits/bit_1", { headers })).json(),
  };
  async function cpuOf(turn) {
    const before = process.cpuUsage();
    for (let count = 0; count < ${CALLS_OF_A_TURN}; count += 1) await turn();
    const { user, system } = process.cpuUsage(before);
    return user + system;
  }
  for (let warm = 0; warm < 3; warm += 1) for (const turn of Object.values(turns)) await cpuOf(turn);
  const ratios = [];
  for (let pair = 0; pair < ${PAIRS}; pair += 1) {
    const [first, second] = pair % 2 === 0 ? ["client", "fetch"] : ["fetch", "client"];
    const cpu = { [first]: await cpuOf(turns[first]), [second]: await cpuOf(turns[second]) };
    ratios.push(cpu.client / cpu.fetch);
  }
  process.stdout.write(JSON.stringify(ratios));
`;

/** Prints how long the first import of a package takes in a new process, ms. */
const IMPORT = (specifier: string) => `
  const started = performance.now();
  await import(${JSON.stringify(specifier)});
  process.stdout.write(String(performance.now() - started));
`;

/** The packed client: processor time of a call beside bare fetch, and its first import beside as many modules of one line. */
export async function benchClient(): Promise<string> {
  const { project, installed } = packedClient();
  const rows = [
    `a call ÷ bare fetch, processor time: ${quartiles(await callRatios(project), CALL_AT_MOST)}`,
    `cold import ÷ as many one-line modules: ${quartiles(importRatios(project, installed), IMPORT_AT_MOST)}`,
  ];
  return ["client, as packed", ...rows.map((row) => `  ${row}`)].join("\n");
}

async function callRatios(project: string): Promise<number[]> {
  const server = await startServer(["--input-type=module", "--eval", SERVER], {}, "/");
  try {
    return JSON.parse(printedBy(project, CALLS, { BENCH_URL: server.url }));
  } finally {
    await server.stop();
  }
}

function importRatios(project: string, installed: string): number[] {
  const plain = mkdtempSync(join(tmpdir(), "rimwise-bench-"));
  try {
    // What is loaded on demand is no part of the first import.
    const modules = readdirSync(join(installed, "dist"), { recursive: true, encoding: "utf8" }).filter(
      (name) => name.endsWith(".js") && name !== "ed25519.js",
    );
    mkdirSync(join(plain, "generated"));
    for (const name of modules)
      writeFileSync(join(plain, name), `export const name = ${JSON.stringify(name)};\n`);
    const imports = modules.map((name, index) => `export { name as name${index} } from "./${name}";\n`);
    writeFileSync(
      join(plain, "index.js"),
      imports.filter((_, index) => modules[index] !== "index.js").join(""),
    );
    writeFileSync(join(plain, "package.json"), '{ "type": "module" }');
    const timeOf = (specifier: string) => Number(printedBy(project, IMPORT(specifier)));
    return Array.from({ length: IMPORTS }, (_, pair) => {
      const plainly = () => timeOf(join(plain, "index.js"));
      const before = pair % 2 === 0 ? undefined : plainly();
      const ours = timeOf("@rimwise/client");
      return ours / (before ?? plainly());
    });
  } finally {
    rmSync(plain, { recursive: true });
  }
}

function printedBy(project: string, script: string, environment: NodeJS.ProcessEnv = {}): string {
  return execFileSync(process.execPath, ["--input-type=module", "--eval", script], {
    cwd: project,
    encoding: "utf8",
    env: { ...process.env, ...environment },
  });
}

/** The middle of the pairs, and the middle half of them. */
function quartiles(ratios: readonly number[], atMost: number): string {
  const sorted = [...ratios].sort((a, b) => a - b);
  const at = (share: number) => (sorted[Math.floor(sorted.length * share)] ?? Number.NaN).toFixed(2);
  return `${at(0.5)} (${at(0.25)} to ${at(0.75)}), at most ${atMost}`;
}
