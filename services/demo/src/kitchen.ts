import type { Client, Job, NewBit, NewJob } from "@rimwise/client";

/** A matched pair for 19 mm frames with a 6.35 mm groove (common sizes). Nothing here was measured anywhere. */
const PAIR = {
  diameterMm: 41.3,
  grooveWidthMm: 6.35,
  grooveDepthMm: 9.53,
  radiusMm: 6,
  landMm: 3.2,
  pilot: "bearing",
} as const;

const DOOR_SET = {
  setName: "Doors, 19 mm",
  shankDiameterMm: 12.7,
  wings: 2,
  toothMaterial: "carbide-tipped",
} as const;

const BITS = [
  {
    name: "Stick of the door set",
    form: { kind: "stick", ...PAIR },
    ...DOOR_SET,
    massG: 180,
    markedMaxRpm: 18_000,
  },
  {
    name: "Cope of the door set",
    form: { kind: "cope", ...PAIR },
    ...DOOR_SET,
    massG: 190,
    markedMaxRpm: 18_000,
  },
] as const satisfies readonly NewBit[];

/** What a kitchen is played with. */
export type KitchenStage = { readonly routerId: string; readonly panelBitId: string };

/** From a list of parts to a day's work: the lines to show. */
export async function kitchenOfDoors(client: Client, stage: KitchenStage): Promise<string[]> {
  const bits = await Promise.all(BITS.map((bit) => client.bits.create(bit)));
  await client.bits.update(
    stage.panelBitId,
    { toothMaterial: "carbide-tipped" },
    await versionOf(client, stage),
  );
  const draft = await client.jobs.create(kitchen(stage));
  const job = await client.jobs.ready(draft.id);
  const { minutes, order } = job.work;
  return [
    `${job.name}: ${job.parts.map(({ count, name }) => `${count} × ${name}`).join(", ")}, and spares.`,
    ...setupLines(job),
    `It takes ${hours(minutes.total.leastMin)} to ${hours(minutes.total.mostMin)}: cutting ${hours(minutes.cutting.usualMin)}, handling ${hours(minutes.handling.usualMin)}, changing over ${hours(minutes.changingOver.usualMin)}${order.isProvenLeast ? ", and no order takes less" : ""}.`,
    `To fetch: ${job.work.bits.map(({ name }) => name).join("; ")}.`,
    ...job.work.findings.map(({ text }) => `  ${text}`),
    ...(await setLines(client)),
    ...(await collision(client, job, bits[0]?.id ?? "")),
    ...(await firstSetup(client, job)),
    ...(await moulding(client)),
  ];
}

function kitchen({ routerId }: KitchenStage): NewJob {
  const frame = { count: 48, spares: 5, widthMm: 57, thicknessMm: 19 };
  const half = (name: "cope" | "stick") =>
    ({ by: "joint", joint: "cope-and-stick", half: name, sizes: { grooveWidthMm: 6.35 } }) as const;
  const panel = {
    by: "joint",
    joint: "panel-and-groove",
    half: "panel",
    sizes: { diameterMm: 90 },
    otherSizes: { grooveWidthMm: 6.35 },
    otherThicknessMm: 19,
    clearanceMm: 0.2,
  } as const;
  return {
    name: "Kitchen, 24 doors in cherry",
    woodId: "black-cherry",
    ...{ startsOn: day(1), wantedOn: day(3) },
    machines: [{ routerId, mounting: "table" }],
    parts: [
      {
        ...{ name: "rail", ...frame, lengthMm: 305 },
        cuts: [
          { along: "both-ends", wanted: half("cope") },
          { along: "one-side", wanted: half("stick") },
        ],
      },
      { ...{ name: "stile", ...frame, lengthMm: 710 }, cuts: [{ along: "one-side", wanted: half("stick") }] },
      {
        ...{ name: "panel", count: 24, spares: 2, lengthMm: 610, widthMm: 310, thicknessMm: 16 },
        cuts: [{ along: "all-round", wanted: panel }],
      },
    ],
  };
}

/** The day's list: each set-up, what comes before, and how long it takes. */
function setupLines({ work }: Job): string[] {
  return work.setups.flatMap(({ number, text, settings, changeMin, cuttingMin, handlingMin }) => [
    `${String(number).padStart(2)}. ${text} ${hours(changeMin)} to set up, ${hours(cuttingMin + handlingMin)} to run.`,
    ...settings.map((setting) => `      ${setting.text}`),
  ]);
}

/** How the bits that belong together fit each other. */
async function setLines(client: Client): Promise<string[]> {
  const lines: string[] = [];
  for await (const { setName, bits, findings } of client.stock.listSets()) {
    const said = findings.map(({ text }) => text).join(" ");
    lines.push(`The set "${setName}" (${bits.map(({ name }) => name).join(", ")}): ${said}`);
  }
  return lines;
}

/** Somebody asks for a bit that the job keeps. */
async function collision(client: Client, { startsOn = "" }: Job, bitId: string): Promise<string[]> {
  const person = await client.people.create({ name: "Sam, third bench", role: "member" });
  const asked = { bitId, personId: person.id, dueAt: `${startsOn}T16:00:00Z` };
  const refused = await client.loans.create(asked).catch((error: unknown) => error);
  return [
    `${person.name} asks for the stick that day: ${refused instanceof Error ? refused.message : "it was lent"}`,
  ];
}

/** The first set-up comes out with chatter: what is left goes on otherwise. */
async function firstSetup(client: Client, job: Job): Promise<string[]> {
  const [first] = job.work.setups;
  if (first === undefined) return [];
  const next = await client.jobs.finishSetup(job.id, { setupId: first.id, outcomes: ["chattered"] });
  return [
    "Set-up 1 is made, and it chattered:",
    ...next.work.findings.filter(({ code }) => code === "after-mishap").map(({ text }) => `  ${text}`),
  ];
}

/** Which bits of the rack make a moulding that no bit makes alone. */
async function moulding(client: Client): Promise<string[]> {
  const found = await client.profiles.search({
    shape: {
      thicknessMm: 19,
      start: { xMm: 4.76, zMm: 0 },
      segments: [
        { kind: "arc", xMm: 0, zMm: 4.76, arcRadiusMm: 4.76, curve: "round" },
        { kind: "line", xMm: 0, zMm: 12 },
        { kind: "line", xMm: 6, zMm: 12 },
        { kind: "line", xMm: 6, zMm: 19 },
      ],
    },
  });
  const [fewest = []] = found.together;
  return [
    `A moulding, rounded above and stepped below: of ${found.looked} bits none makes it alone, ${fewest.length} do together:`,
    ...fewest.map(({ text }) => `  ${text}`),
  ];
}

async function versionOf(client: Client, { panelBitId }: KitchenStage): Promise<number> {
  return (await client.bits.get(panelBitId)).version;
}

function day(fromNow: number): string {
  return new Date(Date.now() + fromNow * 24 * 60 * 60 * 1000).toISOString().slice(0, 10);
}

function hours(minutes: number): string {
  const whole = Math.round(minutes);
  return whole < 60
    ? `${whole} min`
    : `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, "0")} min`;
}
