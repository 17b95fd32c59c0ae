import {
  bitCeilings,
  DEFAULT_POLICY,
  dialSpeeds,
  formDiameterMm,
  formOutline,
  makePlan,
  type PanelsInput,
  sizePanels,
  solveJoint,
  wantedFrom,
} from "@rimwise/domain";
import { type DrawnUnits, PICTURES, type PictureKind, type Scene } from "@rimwise/drawing";
import { PLAN_INPUTS } from "../bench/plan-inputs.ts";
import { EXAMPLE_FORMS } from "../reference/example-forms.ts";
import { COPE, STICK } from "../reference/joint-pairs.ts";

/** One picture of each kind from an invented shop, under a name; `bitNames` are those of the bits in lists. */
export const EXAMPLES: Readonly<Record<PictureKind, (name: string, units: DrawnUnits) => Scene>> = {
  bit: (name, units) => PICTURES.bit.draw({ bit: PANEL_INPUT.bit, name, units, rpm: 11_000 }),
  "set-up": (name, units) => {
    const input = PANEL_INPUT;
    return PICTURES["set-up"].draw({ input, plan: makePlan(input), name, units });
  },
  limits: (name, units) => PICTURES.limits.draw({ plan: makePlan(PANEL_INPUT), name, units }),
  dial: (name, units) =>
    PICTURES.dial.draw({
      router: PANEL_INPUT.router,
      policy: DEFAULT_POLICY,
      name,
      units,
      bits: marksOf(name),
    }),
  "diameter-speed": (name, units) =>
    PICTURES["diameter-speed"].draw({
      policy: DEFAULT_POLICY,
      name,
      units,
      bits: BITS.map((bit) => ({
        name,
        diameterMm: formDiameterMm(bit.form),
        rpm: Math.min(...Object.values(bitCeilings(bit, DEFAULT_POLICY))),
      })),
    }),
  joint: (name, units) =>
    PICTURES.joint.draw({
      kind: "cope-and-stick",
      joint: solveJoint("cope-and-stick", [STICK, COPE], { thicknessMm: 19 }),
      name,
      units,
    }),
  panel: (name, units) => {
    const [panel] = sizePanels(PANELS).panels;
    if (panel === undefined) throw new Error("one opening has one panel");
    return PICTURES.panel.draw({
      panel,
      groove: PANELS.groove,
      thicknessMm: PANELS.thicknessMm,
      name,
      units,
    });
  },
  moulding: (name, units) => {
    const corners = [
      [9, 6],
      [0, 6],
    ].map(([xMm = 0, zMm = 0]) => ({ kind: "line" as const, xMm, zMm }));
    const wanted = wantedFrom({ thicknessMm: 19, start: { xMm: 9, zMm: 0 }, segments: corners });
    const setting = {
      presentation: { work: "flat" as const, face: "front" as const },
      heightMm: 6,
      fenceMm: 1,
    };
    const outline = formOutline({ kind: "straight", diameterMm: 20, cuttingLengthMm: 7 });
    return PICTURES.moulding.draw({ wanted, setups: [{ setting, outline, bitName: name }], name, units });
  },
  rack: (name, units) =>
    PICTURES.rack.draw({
      name,
      units,
      positions: [
        ...BITS.map((bit, index) => ({
          label: `${index + 1} ${name}`,
          bit,
          name,
          state: STATES[index % 4] ?? "here",
        })),
        { label: name, state: "here" as const },
      ],
    }),
  day: (name, units) =>
    PICTURES.day.draw({
      name,
      units,
      setups: BITS.slice(0, 6).map((bit, index) => ({
        bit,
        bitName: name,
        station: name,
        mark: index % 2 === 0 ? 2.5 : undefined,
        rpm: 12_000,
        cutterMm: 9.5,
        fenceMm: index % 2 === 0 ? 6.35 : undefined,
        parts: index + 1,
        cuts: name,
        changeMin: 6,
        workMin: index * 20,
      })),
    }),
};

const STATES = ["here", "out", "held", "missing"] as const;
const BITS = EXAMPLE_FORMS.map((form) => ({ form, shankDiameterMm: 12.7, wings: 2 }));

const PANEL_INPUT = largePanel();

const PANELS: PanelsInput = {
  openings: [{ widthMm: 300, heightMm: 500 }],
  groove: { depthMm: 10, widthMm: 6.35 },
  thicknessMm: 6,
  wood: PANEL_INPUT.wood,
  moisture: { percent: 8 },
  climate: {
    driest: { relativeHumidityPercent: 30, temperatureC: 21 },
    wettest: { relativeHumidityPercent: 60, temperatureC: 21 },
  },
  policy: DEFAULT_POLICY,
};

function marksOf(name: string) {
  const speeds = dialSpeeds(PANEL_INPUT.router, DEFAULT_POLICY);
  return BITS.slice(0, 20).map((_, index) => {
    const speed = speeds[index % (speeds.length + 1)];
    return { name, mark: speed?.mark, rpm: speed?.rpm };
  });
}

function largePanel() {
  const input = PLAN_INPUTS["large panel, table"];
  if (input === undefined) throw new Error("the large panel is one of the plans");
  return input;
}
