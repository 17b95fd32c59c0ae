import type { Bit, ToothMaterial } from "@rimwise/domain";
import { made } from "./crib.ts";
import type { Shop } from "./shop.ts";

/** When the shop is furnished. */
export const ENTERED = "2026-03-02T08:00:00.000Z";
/** When everything is asked: what was read is young enough for the defaults, and too old for the strictest policy. */
export const ASKED = "2026-06-10T08:00:00.000Z";

const PANEL: Bit = {
  form: {
    kind: "panel-raising",
    diameterMm: 88.9,
    pilotDiameterMm: 22,
    profileHeightMm: 12,
    face: "cove",
    tongueWidthMm: 10,
  },
  shankDiameterMm: 12.7,
  wings: 2,
  massG: 340,
};
const straight = (diameterMm: number, cuttingLengthMm: number, shankDiameterMm = 12.7): Bit => ({
  form: { kind: "straight", diameterMm, cuttingLengthMm },
  shankDiameterMm,
  wings: 2,
});

/** Bits on both sides of every threshold of what may be held in two hands. */
const RACK: Readonly<Record<string, Bit>> = {
  small: { ...straight(12.7, 25.4), massG: 58 },
  middling: straight(31.75, 25.4),
  wide: straight(50.8, 31.75),
  slender: straight(19, 50, 6.35),
  profile: {
    form: { kind: "round-over", diameterMm: 31.75, radiusMm: 9.525 },
    shankDiameterMm: 6.35,
    wings: 2,
  },
  panel: PANEL,
};

const ROUTER = {
  name: "Table router",
  minRpm: 8000,
  maxRpm: 24_000,
  dial: { marks: { first: 1, last: 5 }, steps: 2 },
  colletDiametersMm: [6.35, 12.7],
};

/** What the edges of a bit of the rack are made of. */
export function toothOf(name: string): ToothMaterial {
  return TEETH[name] ?? "carbide-tipped";
}

const TEETH: Readonly<Record<string, ToothMaterial>> = {
  middling: "high-speed-steel",
  slender: "solid-carbide",
  wide: "diamond",
};

/** A shop with a rack, a router, and something learned of both. */
export type World = {
  readonly shop: Shop;
  readonly bits: readonly { readonly id: string; readonly name: string; readonly bit: Bit }[];
  readonly idOf: (name: string) => string;
  readonly routerId: string;
};

/** Furnishes a shop: every one alike. */
export async function furnished(shop: Shop): Promise<World> {
  const bits: World["bits"][number][] = [];
  for (const [name, bit] of Object.entries(RACK)) {
    const kept = {
      ...bit,
      name,
      toothMaterial: toothOf(name),
      smallestUsableDiameterMm: 0.9 * diameterOf(bit),
    };
    bits.push({ id: (await made(shop, "/v1/bits", kept)).id, name, bit });
  }
  const idOf = (name: string) => bits.find((each) => each.name === name)?.id ?? "";
  const router = await made(shop, "/v1/routers", ROUTER);
  const instrument = "Dial indicator";
  for (const [mark, rpm] of [
    [2, 11_800],
    [3, 15_700],
  ]) {
    await made(shop, `/v1/routers/${router.id}/dial-readings`, { mark, rpm, instrument });
  }
  for (const name of ["small", "panel"]) {
    const reading = { bitId: idOf(name), routerId: router.id, runOutMm: 0.02, instrument };
    await made(shop, "/v1/run-out-readings", reading);
    const work = { bitId: idOf(name), routerId: router.id, woodId: "black-cherry" };
    await made(shop, "/v1/uses", {
      ...work,
      metres: name === "small" ? 450 : 60,
      minutes: 30,
      outcomes: ["fine"],
    });
  }
  const shook = { bitId: idOf("wide"), routerId: router.id, mark: 4, outcome: "shook" };
  await made(shop, "/v1/speed-trials", shook);
  return { shop, bits, idOf, routerId: router.id };
}

function diameterOf({ form }: Bit): number {
  return "diameterMm" in form ? (form.diameterMm ?? 0) : 0;
}

const EDGES = [
  { lengthMm: 300, grain: "end" },
  { lengthMm: 450, grain: "long" },
];

/** Plans of many kinds for what is kept in a world. */
export function planRequests({ idOf, routerId }: World): object[] {
  const ask = (name: string, mounting: string, cut: object) => ({
    bit: { id: idOf(name) },
    router: { id: routerId },
    mounting,
    woodId: "black-cherry",
    cut: { edges: EDGES, ...cut },
  });
  return [
    ask("panel", "table", { kind: "panel", thicknessMm: 19 }),
    ask("small", "table", { kind: "groove", depthMm: 12 }),
    ask("small", "handheld", { kind: "groove", depthMm: 12 }),
    ask("slender", "table", { kind: "groove", depthMm: 20 }),
    ask("wide", "table", { kind: "groove", depthMm: 10 }),
    ask("wide", "handheld", { kind: "groove", depthMm: 10 }),
    ask("middling", "handheld", { kind: "edge", thicknessMm: 20 }),
    ask("middling", "handheld", {
      kind: "edge",
      thicknessMm: 20,
      fenceMm: 15.2,
      feedDirection: "with-rotation",
    }),
    ask("profile", "handheld", { kind: "edge", thicknessMm: 19 }),
  ];
}

/** Panels to size for what is kept in a world. */
export function panelRequest({ idOf, routerId }: World): object {
  return {
    openings: [{ widthMm: 300, heightMm: 500, count: 2 }],
    groove: { depthMm: 10, widthMm: 6.35 },
    thicknessMm: 19,
    woodId: "black-cherry",
    sawn: "flat",
    moisture: { percent: 8 },
    climate: {
      driest: { relativeHumidityPercent: 30, temperatureC: 21.1 },
      wettest: { relativeHumidityPercent: 60, temperatureC: 21.1 },
    },
    bit: { id: idOf("panel") },
    router: { id: routerId },
    mounting: "table",
  };
}

/** A job in a table and by hand, with what is kept in a world. */
export function jobRequest({ idOf, routerId }: World): object {
  const [table, hand] = ["table", "handheld"].map((mounting) => ({ routerId, mounting }));
  const wanted = { by: "bit", bitId: idOf("small"), cut: { kind: "groove", depthMm: 12 } };
  return {
    ...{ name: "Shelves", woodId: "black-cherry", machines: [table, hand] },
    parts: [
      {
        ...{ name: "Shelf", count: 4, lengthMm: 600, widthMm: 200, thicknessMm: 19 },
        cuts: [
          { along: "face-across", positionMm: 100, wanted, machine: table },
          { along: "face-along", positionMm: 50, wanted, machine: hand },
        ],
      },
    ],
  };
}
