import { readFile, writeFile } from "node:fs/promises";
import {
  ConnectionError,
  createClient,
  type ExpectedUse,
  type JsonWebKeySet,
  TimeoutError,
  verifySheet,
} from "@rimwise/client";

// Asks before a machine is unlocked; while the service is away, the signed sheets that were kept decide.
// node kiosk.js keep sheets.json          keeps what is needed without the service: run it every quarter of an hour
// node kiosk.js ask sheets.json '{ "personId": …, "bitId": …, "routerId": …, "mark": …, "woodId": …, "mounting": … }'
// Exit code 0 is a yes; everything else, an error too, is a no.

type Kept = { readonly keys: JsonWebKeySet; readonly status: string; readonly sheets: readonly string[] };
type Use = ExpectedUse & { readonly personId: string };

const [command, file = "sheets.json", asked = "{}"] = process.argv.slice(2);
const client = createClient({
  baseUrl: process.env["RIMWISE_URL"] ?? "http://127.0.0.1:8080",
  key: process.env["RIMWISE_KEY"],
  deadlineMs: 5000,
  retries: 1,
});

if (command === "keep") await keep();
else process.exitCode = (await isAllowed(JSON.parse(asked))) ? 0 : 1;

async function keep(): Promise<void> {
  const keys = await client.signing.getJsonWebKeySet();
  const { jws: status } = await client.approvals.status();
  const sheets: string[] = [];
  for await (const { id } of client.approvals.list({ state: "issued" }))
    sheets.push((await client.approvals.sheet(id)).jws);
  await writeFile(file, JSON.stringify({ keys, status, sheets } satisfies Kept));
  print(`Kept ${sheets.length} sheets.`);
}

async function isAllowed(use: Use): Promise<boolean> {
  const { mark, ...rest } = use;
  try {
    const answer = await client.checks.ask({ ...rest, ...(mark !== null && { mark }) });
    print(
      answer.isAllowed ? "Yes, says the service." : `No: ${answer.reasons.map(({ text }) => text).join(" ")}`,
    );
    return answer.isAllowed;
  } catch (error) {
    // A refusal is an answer. Only silence is a reason to look at the sheets.
    if (!(error instanceof ConnectionError || error instanceof TimeoutError)) throw error;
    print(`The service is away (${error.message})`);
    return isAllowedBySheet(use);
  }
}

async function isAllowedBySheet(use: Use): Promise<boolean> {
  const { keys, status, sheets }: Kept = JSON.parse(await readFile(file, "utf8"));
  const reasons = new Set<string>();
  for (const jws of sheets) {
    const verdict = await verifySheet(jws, { keys, status, expected: use, clockLeewayS: 30 });
    // Who is in a course and qualified only the service knows: without it, a sheet must name the person.
    const isNamed = verdict.sheet?.setting.personIds?.includes(use.personId) === true;
    if (verdict.isValid && isNamed) {
      print(
        `Yes, by the sheet "${verdict.sheet.setting.name}". Supervision: ${verdict.sheet.setting.supervision}.`,
      );
      return true;
    }
    for (const reason of verdict.isValid ? ["person-not-named"] : verdict.reasons) reasons.add(reason);
  }
  print(`No sheet allows it (${[...reasons].join(", ") || "none was kept"}). Ask whoever is in charge.`);
  return false;
}

function print(line: string): void {
  process.stdout.write(`${line}\n`);
}
