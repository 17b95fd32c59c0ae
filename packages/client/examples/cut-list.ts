import { readFile } from "node:fs/promises";
import { createClient, type Plan, type PlanRequest } from "@rimwise/client";

// Plans a whole cut list in one request and prints it by set-up, so that each bit is clamped and set once.
// RIMWISE_URL=http://127.0.0.1:8080 RIMWISE_KEY=… node cut-list.js cut-list.json

type Part = { readonly name: string } & Pick<PlanRequest, "mounting" | "woodId" | "cut"> & {
    readonly bitId: string;
    readonly routerId: string;
  };
type SetUp = { readonly part: Part; readonly plan: Plan; readonly parts: string[] };

const [file = "cut-list.json"] = process.argv.slice(2);
const client = createClient({
  baseUrl: process.env["RIMWISE_URL"] ?? "http://127.0.0.1:8080",
  key: process.env["RIMWISE_KEY"],
});

const parts: Part[] = JSON.parse(await readFile(file, "utf8"));
const requests = parts.map(({ bitId, routerId, mounting, woodId, cut }) => ({
  bit: { id: bitId },
  router: { id: routerId },
  mounting,
  woodId,
  cut,
}));
const { results } = await client.plans.previewMany({ requests });

const setUps = new Map<string, SetUp>();
const refused: string[] = [];
for (const [index, result] of results.entries()) {
  const part = parts[index];
  if (part === undefined) continue;
  if (result.outcome === "refused") {
    refused.push(`${part.name}: ${result.problem.detail}`);
    continue;
  }
  const { plan } = result;
  if (plan.verdict === "do-not-run")
    refused.push(`${part.name}: ${plan.findings.map(({ text }) => text).join(" ")}`);
  else {
    const key = keyOf(part, plan);
    const setUp = setUps.get(key) ?? { part, plan, parts: [] };
    setUp.parts.push(part.name);
    setUps.set(key, setUp);
  }
}

for (const [index, setUp] of [...setUps.values()].sort(byRouterAndBit).entries()) {
  print(`Set-up ${index + 1}: ${await titleOf(setUp)}`);
  for (const { number, heightMm, fenceMm, feedMPerMin } of setUp.plan.passes)
    print(`  pass ${number}: height ${heightMm} mm, fence ${fenceMm} mm, feed ${feedMPerMin} m/min`);
  for (const { text } of setUp.plan.precautions) print(`  mind: ${text}`);
  print(`  ${setUp.parts.length} parts: ${setUp.parts.join(", ")}`);
}
for (const line of refused) print(`Do not run: ${line}`);
print("What is marked on the tool, the router's manual and the person in charge come first.");
if (refused.length > 0) process.exitCode = 1;

/** What has to be set: parts that agree in all of it are cut one after the other. */
function keyOf({ bitId, routerId, mounting }: Part, { speed, passes }: Plan): string {
  const settings = passes.map(({ heightMm, fenceMm }) => [heightMm, fenceMm]);
  return JSON.stringify([routerId, bitId, mounting, speed.mark, speed.rpm, settings]);
}

function byRouterAndBit({ part: a }: SetUp, { part: b }: SetUp): number {
  return a.routerId.localeCompare(b.routerId) || a.bitId.localeCompare(b.bitId);
}

async function titleOf({ part, plan: { speed } }: SetUp): Promise<string> {
  const [bit, router] = await Promise.all([client.bits.get(part.bitId), client.routers.get(part.routerId)]);
  const setting = speed.mark === null ? `${speed.rpm} rpm` : `mark ${speed.mark}`;
  return `${bit.name} in ${router.name} (${part.mounting}) at ${setting}`;
}

function print(line: string): void {
  process.stdout.write(`${line}\n`);
}
