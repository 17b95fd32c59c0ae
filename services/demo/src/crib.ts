import type { Client, Event, PlanRequest, TrialProposal } from "@rimwise/client";
import { speedOf } from "./speed.ts";

/** What the day is played with: a bit, a router, and a plan's remaining fields. */
export type Stage = {
  readonly bitId: string;
  readonly routerId: string;
  readonly rest: Pick<PlanRequest, "mounting" | "woodId" | "cut">;
};

/** From this speed on the invented bit shakes in the invented router. */
const SHAKES_FROM_RPM = 11_500;

/**
 * A day in the tool crib: somebody borrows the bit, tries it out step by step, plans with what that taught, logs
 * the work and brings the bit back. Gives the lines to show.
 */
export async function dayInTheCrib(client: Client, { bitId, routerId, rest }: Stage): Promise<string[]> {
  const rack = await client.places.create({ name: "Rack 2", kind: "rack" });
  const place = await client.places.create({ name: "Position 14", kind: "position", insideId: rack.id });
  const person = await client.people.create({ name: "Robin, second bench", role: "member" });
  const bit = await client.bits.get(bitId);
  await client.bits.update(bitId, { homePlaceId: place.id }, bit.version);
  await client.places.takeStock(rack.id, { bitIds: [bitId] });

  const loan = await client.loans.create({ bitId, personId: person.id, routerId, job: "Kitchen doors" });
  const second = await client.loans.create({ bitId, personId: person.id }).catch((error: unknown) => error);
  const lines = [
    `${person.name} takes "${bit.name}" from ${rack.name}, ${place.name}; due back ${loan.dueAt.slice(0, 16)}.`,
    `A second loan of it is refused: ${second instanceof Error ? second.message : "it was not"}`,
  ];

  const asked = { bit: { id: bitId }, router: { id: routerId }, ...rest };
  const before = await client.plans.preview(asked);
  lines.push(
    `Before any trial the plan says ${speedOf(before.speed)}.`,
    "A guided speed trial, without wood:",
  );
  lines.push(...(await guidedTrial(client, bitId, routerId)));

  const plan = await client.plans.create({ name: "Kitchen doors", ...asked });
  const { speed, findings } = plan.plan;
  lines.push(
    `With what it taught the plan says ${speedOf(speed)}; the ceiling comes from ${speed.bindingLimit}.`,
  );
  lines.push(...findings.map(({ text }) => `  ${text}`));

  await client.uses.create({ planId: plan.id, metres: 6.2, minutes: 4, outcomes: ["scorched"] });
  const warned = await client.plans.preview(asked);
  const warning = warned.findings.find(({ code }) => code === "scorched-before");
  lines.push(
    `The work is logged: 6.2 m, and it scorched. The next plan warns: ${warning?.text ?? "nothing"}`,
  );
  await client.loans.return(loan.id, {});
  const edge = await client.bits.edge(bitId);
  lines.push(`The bit is back. About ${edge.usedPercent} % of its edge is used (an estimate).`);
  return lines;
}

/** Everything that happened to one record, oldest first, and whether the chain of events is whole. */
export async function historyOf(client: Client, subjectId: string): Promise<string[]> {
  const lines: string[] = [];
  for await (const event of client.events.list({ subjectId })) lines.push(eventLine(event));
  await client.checkpoints.create();
  const { isIntact, checked, checkpoints } = await client.events.verify({});
  const verdict = isIntact ? "the chain is whole" : "the chain is broken";
  return [
    ...lines,
    `${checked} events checked, ${checkpoints} signed checkpoint${checkpoints === 1 ? "" : "s"} among them: ${verdict}.`,
  ];
}

async function guidedTrial(client: Client, bitId: string, routerId: string): Promise<string[]> {
  const lines: string[] = [];
  let next = await client.speedTrials.propose(bitId, { query: { routerId } });
  while (next.kind === "try") {
    const outcome = (next.rpm ?? 0) >= SHAKES_FROM_RPM ? "shook" : "ran-free";
    await client.speedTrials.create({ bitId, routerId, outcome, ...settingOf(next) });
    lines.push(`  step ${next.step}: ${speedOf(next)}: ${outcome}`);
    next = await client.speedTrials.propose(bitId, { query: { routerId } });
  }
  return [...lines, `  ${next.reason}`];
}

function settingOf({ mark, rpm }: TrialProposal) {
  if (mark !== null) return { mark };
  return rpm === null ? {} : { rpm };
}

function eventLine({ sequence, at, type, data }: Event): string {
  const names = Object.keys("after" in data ? data.after : {}).filter(
    (name) => name !== "version" && name !== "updatedAt",
  );
  return `  ${String(sequence).padStart(4)}  ${at.slice(11, 19)}  ${type.padEnd(14)} ${type.endsWith("created") ? "" : names.join(", ")}`;
}
