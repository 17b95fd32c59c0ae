import { mkdirSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Client, PanelsRequest, PlanRequest } from "@rimwise/client";

/** What is pictured. */
export type PictureStage = {
  readonly plan: PlanRequest;
  readonly panels: PanelsRequest;
  readonly bitId: string;
  readonly routerId: string;
};

/** Where the demonstration leaves what it drew: the same place every time. */
const FOLDER = join(tmpdir(), "rimwise-demo-pictures");

/** Draws what the shop looks at before a cut, and keeps it as files: the lines to show. */
export async function picturesOf(client: Client, stage: PictureStage): Promise<string[]> {
  mkdirSync(FOLDER, { recursive: true });
  const lines = [`They are in ${FOLDER}:`];
  for (const [name, what, drawn] of await pictures(client, stage)) {
    writeFileSync(join(FOLDER, name), Buffer.from(await drawn.arrayBuffer()));
    lines.push(`  ${name.padEnd(22)} ${what}`);
  }
  return lines;
}

type Picture = readonly [name: string, what: string, drawn: Blob];

async function pictures(client: Client, stage: PictureStage): Promise<Picture[]> {
  const { plan, panels, bitId, routerId } = stage;
  const inches = { query: { units: "imperial" } } as const;
  const [rack] = await client.places.list().all({ limit: 1 });
  const [job] = await client.jobs.list().all({ limit: 1 });
  const [stick, cope] = await doorSet(client);
  const drawn: Picture[] = [
    ["bit.svg", "the raised panel bit with its sizes", await client.bits.picture(bitId)],
    ["set-up.svg", "the cherry panel at the table", await client.plans.draw(plan)],
    ["set-up-in-inches.svg", "the same in inches", await client.plans.draw(plan, inches)],
    [
      "set-up.png",
      "the same for what shows no SVG",
      await client.plans.draw(plan, { query: { format: "png" } }),
    ],
    ["limits.svg", "what limits its speed", await client.plans.draw(plan, { query: { kind: "limits" } })],
    ["dial.svg", "the dial of the table router with its bits", await client.routers.picture(routerId)],
    [
      "diameter-speed.svg",
      "its bits by diameter and speed",
      await client.routers.picture(routerId, { query: { kind: "diameter-speed" } }),
    ],
    ["panel.svg", "a door's panel through the year", await client.panels.draw(panels)],
  ];
  if (rack !== undefined)
    drawn.push(["rack.svg", "a rack with what is in it", await client.places.picture(rack.id)]);
  if (stick !== undefined && cope !== undefined) {
    const joint = { joint: "cope-and-stick", first: stick, second: cope, thicknessMm: 19 } as const;
    drawn.push(["joint.svg", "the joint of the door set, closed", await client.joints.draw(joint)]);
  }
  if (job !== undefined) drawn.push(["day.svg", "the kitchen's day", await client.jobs.picture(job.id)]);
  return [...drawn, ...(await sheets(client, stage, job?.id, rack?.id))];
}

/** What is printed: at the machine, on the wall, on the bits. */
async function sheets(
  client: Client,
  { plan, routerId }: PictureStage,
  jobId: string | undefined,
  rackId: string | undefined,
): Promise<Picture[]> {
  const printed: Picture[] = [
    ["plan-a5.pdf", "the cherry panel to take to the machine", await client.plans.print(plan)],
    [
      "plan-card.pdf",
      "the same on an index card",
      await client.plans.print(plan, { query: { paper: "index-card" } }),
    ],
    ["wall-chart.pdf", "the table router's chart for the wall", await client.routers.printout(routerId)],
  ];
  if (jobId !== undefined)
    printed.push(["day.pdf", "the kitchen's day with what to fetch", await client.jobs.printout(jobId)]);
  if (rackId !== undefined) {
    const asPdf = { query: { format: "pdf" } } as const;
    printed.push(["labels.pdf", "labels of a rack and its bits", await client.places.labels(rackId, asPdf)]);
  }
  return printed;
}

async function doorSet(client: Client): Promise<{ readonly id: string }[]> {
  const [set] = await client.stock.listSets().all({ limit: 1 });
  return (set?.bits ?? []).map(({ id }) => ({ id }));
}
