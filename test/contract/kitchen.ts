/** What a kitchen of the invented shop is made with: a matched pair for 19 mm frames, and a panel raiser. Sizes: common practice. */
const PAIR = {
  diameterMm: 41.3,
  grooveWidthMm: 6.35,
  grooveDepthMm: 9.53,
  landMm: 3.2,
  pilot: "bearing",
} as const;

const LARGE = {
  shankDiameterMm: 12.7,
  wings: 2,
  toothMaterial: "carbide-tipped",
  markedMaxRpm: 18_000,
} as const;

/** The bits of one kitchen. `radiusMm` tells one set from another: nobody else's bits will do for it. */
export function kitchenBits(radiusMm = 6) {
  const pair = { ...PAIR, radiusMm };
  return {
    cope: { name: "Cope", form: { kind: "cope", ...pair }, ...LARGE, massG: 190, notes: "Door set." },
    stick: { name: "Stick", form: { kind: "stick", ...pair }, ...LARGE, massG: 180, notes: "Door set." },
    panel: {
      name: "Raised panel, 89 mm",
      form: {
        kind: "panel-raising",
        ...{ diameterMm: 88.9, pilotDiameterMm: 22, tongueWidthMm: 10, face: "cove" },
        profileHeightMm: radiusMm + 2,
      },
      ...LARGE,
      massG: 340,
      markedMaxRpm: 12_000,
      notes: "Door set.",
    },
  } as const;
}

export const KITCHEN_ROUTER = {
  name: "Table 1",
  ...{ minRpm: 8000, maxRpm: 22_000, dial: { marks: { first: 1, last: 6 }, steps: 2 }, inputPowerW: 1800 },
  colletDiametersMm: [12.7],
};

export type KitchenIds = {
  readonly radiusMm: number;
  readonly copeId: string;
  readonly stickId: string;
  readonly panelId: string;
  readonly routerId: string;
};

/** 24 doors, five parts each, in three kinds: two rails, two stiles, a panel; spares: about one in ten (common practice). */
export function kitchenJob({ radiusMm, stickId, panelId, routerId }: KitchenIds) {
  const frame = { count: 48, spares: 4, widthMm: 57, thicknessMm: 19 };
  const by = (bitId: string, kind: string) => ({ by: "bit", bitId, cut: { kind } });
  const form = (name: string) => ({ by: "form", form: name, sizes: { radiusMm } });
  return {
    name: "Cherry kitchen, 24 doors",
    woodId: "black-cherry",
    ...{ startsOn: "2026-12-01", wantedOn: "2026-12-04" },
    machines: [{ routerId, mounting: "table" }],
    parts: [
      {
        ...{ name: "Rail", ...frame, lengthMm: 300 },
        cuts: [
          { along: "both-ends", wanted: form("cope") },
          { along: "one-side", wanted: form("stick") },
        ],
      },
      {
        ...{ name: "Stile", ...frame, lengthMm: 700 },
        cuts: [{ along: "one-side", wanted: by(stickId, "joint") }],
      },
      {
        ...{ name: "Panel", count: 24, spares: 1, lengthMm: 600, widthMm: 305, thicknessMm: 16 },
        cuts: [{ along: "all-round", wanted: by(panelId, "panel") }],
      },
    ],
  };
}
