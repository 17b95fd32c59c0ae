import {
  closeJoint,
  DomainError,
  formOutline,
  type JointHalf,
  type JointKind,
  jointDefinition,
  sizePanels,
  solveJoint,
  wantedFrom,
} from "@rimwise/domain";
import { PICTURES, svg } from "@rimwise/drawing";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { randomFrom } from "../fuzz/random.ts";
import { panelJobs } from "../properties/panel-jobs.ts";
import { bitWith, COPE, FRESH, GROOVE, off, STICK, TONGUE } from "../reference/joint-pairs.ts";
import { type Cut, grazesSurface, pathLeftBy, randomCut } from "../reference/planted.ts";
import { rackOf } from "../reference/search-rack.ts";
import { DRAWN_TO_MM, goneMm, offRingsMm, WRITTEN_MM } from "./compare.ts";
import { expectKept } from "./layout.ts";
import { readBack } from "./read-back.ts";

const CASES = Number(process.env["PICTURE_CASES"] ?? 30);
const KEPT_MM = DRAWN_TO_MM + WRITTEN_MM;
const THICKNESS_MM = 19;

describe("a joint", () => {
  it.each(FRESH)("%s closes as it is drawn", (_, kind, bits, asked) => {
    const { first, second } = solveJoint(kind, bits, asked);
    expectJoint(kind, first, second);
  });

  it("shows the gap and the overlap of worn bits and settings that are off", () => {
    const slack = fc.double({ min: -0.4, max: 0.4, noNaN: true });
    fc.assert(
      fc.property(slack, slack, slack, fc.boolean(), (width, depth, height, isDoor) => {
        const sizes = { grooveWidthMm: 6.35 + width, grooveDepthMm: 9.53 + depth };
        const kind = isDoor ? "cope-and-stick" : "tongue-and-groove";
        const bits = isDoor
          ? ([bitWith(STICK, sizes), COPE] as const)
          : ([bitWith(GROOVE, sizes), TONGUE] as const);
        const { first, second } = solveJoint(kind, bits, { thicknessMm: THICKNESS_MM });
        expectJoint(kind, first, off(second, height));
      }),
      { numRuns: CASES },
    );
  });
});

it("a panel stands in its grooves as it is computed, at both ends of the year", () => {
  fc.assert(
    fc.property(panelJobs, (input) => {
      const sizing = sized(input);
      if (sizing === undefined) return;
      const { raising } = sizing;
      for (const panel of sizing.panels) {
        const scene = PICTURES.panel.draw({
          panel,
          groove: input.groove,
          thicknessMm: input.thicknessMm,
          ...(input.bit !== undefined &&
            raising !== undefined && { raising: { bit: input.bit, ...raising } }),
          name: "Alder Lane doors",
          units: "imperial",
        });
        expectKept(scene);
        const { measures, paths } = readBack(svg(scene));
        for (const side of ["width", "height"] as const) {
          for (const when of ["driest", "wettest"] as const) {
            const { gapMm, engagementMm } = panel[side][when];
            const drawn = (name: string) =>
              measures.find((measure) => measure.name === `${side}-${when}-${name}`);
            const lengthOf = (name: string) => {
              const [one, other] = drawn(name)?.tips ?? [];
              return Math.abs((other?.xMm ?? 0) - (one?.xMm ?? 0));
            };
            expect(Math.abs(lengthOf("gap") - Math.max(0, gapMm))).toBeLessThan(KEPT_MM);
            expect(Math.abs(lengthOf("cover") - Math.max(0, engagementMm))).toBeLessThan(KEPT_MM);
            const wood = paths.find(({ of, group }) => of === "panel" && group === `${side}-${when}`);
            const edgeMm = Math.min(...(wood?.rings.flat().map(({ xMm }) => xMm) ?? []));
            expect(edgeMm).toBeGreaterThan(-engagementMm - KEPT_MM);
          }
        }
      }
    }),
    { numRuns: CASES },
  );
});

it("each set-up of a moulding takes the share that its bit takes, and what is wanted is left", () => {
  const random = randomFrom(11);
  const rack = rackOf(200, random);
  for (let found = 0; found < Math.ceil(CASES / 5); ) {
    const cuts = plantedCuts(random, rack);
    const path = pathLeftBy(cuts, THICKNESS_MM);
    if (grazesSurface(path)) continue;
    found += 1;
    const wanted = wantedFrom(path);
    const setups = cuts.map(({ bit, work, face, heightMm, fenceMm }) => ({
      setting: { presentation: { work, face }, heightMm, fenceMm },
      outline: bit.outline,
      bitName: bit.id,
    }));
    const scene = PICTURES.moulding.draw({ wanted, setups, name: "Alder Lane", units: "metric" });
    expectKept(scene);
    const { paths } = readBack(svg(scene));
    const wall = paths.filter(({ of }) => of === "wanted").flatMap(({ rings }) => rings);
    cuts.forEach(({ bit, face, heightMm, fenceMm }, index) => {
      const share = paths.find(({ of, number }) => of === "share" && number === index + 1)?.rings ?? [];
      for (let place = 0.5; place < 40; place += 1) {
        const zMm = (place / 40) * THICKNESS_MM;
        const xMm = goneMm(bit.outline, [{ heightMm, fenceMm, thicknessMm: THICKNESS_MM }], zMm);
        if (xMm <= 0) continue;
        const yMm = face === "front" ? zMm : THICKNESS_MM - zMm;
        expect(offRingsMm(share, { xMm, yMm })).toBeLessThan(KEPT_MM);
      }
    });
    for (const corner of path.segments) {
      expect(offRingsMm(wall, { xMm: corner.xMm, yMm: corner.zMm })).toBeLessThan(KEPT_MM);
    }
  }
});

function plantedCuts(random: ReturnType<typeof randomFrom>, rack: ReturnType<typeof rackOf>): Cut[] {
  const cuts: Cut[] = [];
  while (cuts.length < 2) {
    const presentation = { work: "flat", face: random.of(["front", "back"] as const) } as const;
    const cut = randomCut(random.of(rack), presentation, THICKNESS_MM, random);
    if (cut !== undefined) cuts.push(cut);
  }
  return cuts;
}

function sized(input: Parameters<typeof sizePanels>[0]) {
  try {
    return sizePanels(input);
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

/** Both walls are where the domain has them, and the marks stand at its widest gap and deepest overlap. */
function expectJoint(kind: JointKind, first: JointHalf, second: JointHalf): void {
  const closure = closeJoint(kind, first, second);
  const scene = PICTURES.joint.draw({
    kind,
    joint: { first, second, closure, findings: [] },
    name: kind,
    units: "metric",
  });
  expectKept(scene);
  const drawn = readBack(svg(scene));
  const ringsOf = (name: string) => drawn.paths.filter(({ of }) => of === name).flatMap(({ rings }) => rings);
  const [mine, theirs] = [ringsOf("first"), ringsOf("other")];
  const { isTurnedOver } = jointDefinition(kind);
  for (const [half, rings, isOther] of [
    [first, mine, false],
    [second, theirs, true],
  ] as const) {
    const outline = formOutline(half.bit.form);
    for (let place = 0.43; place < 50; place += 1) {
      const zMm = (place / 50) * half.setting.thicknessMm;
      const gone = goneMm(outline, [half.setting], zMm);
      const xMm = isOther ? closure.reachMm - Math.max(0, gone) : Math.max(0, gone);
      const yMm = isOther ? (isTurnedOver ? half.setting.thicknessMm - zMm : zMm) + closure.facesOffMm : zMm;
      if (gone <= 0 && jointDefinition(kind).closes === "slid") continue;
      expect(offRingsMm(rings, { xMm, yMm }), `${kind} at ${zMm}`).toBeLessThan(KEPT_MM);
    }
  }
  for (const [name, { mm, xMm, zMm }] of [
    ["gap", closure.gap],
    ["overlap", closure.overlap],
  ] as const) {
    const [place] = ringsOf(`${name}-place`);
    if (mm < 0.005) expect(place).toBeUndefined();
    else {
      const middle = {
        xMm: ((place?.[0]?.xMm ?? 0) + (place?.[1]?.xMm ?? 0)) / 2,
        yMm: place?.[0]?.yMm ?? 0,
      };
      expect(Math.hypot(middle.xMm - xMm, middle.yMm - zMm)).toBeLessThan(KEPT_MM);
      // One wall runs through the place, and the other lies so far from it as the gap is wide.
      const [one, other] = [offRingsMm(mine, middle), offRingsMm(theirs, middle)];
      expect(Math.min(one, other)).toBeLessThan(KEPT_MM);
      expect(Math.abs(Math.max(one, other) - mm)).toBeLessThan(2 * KEPT_MM);
    }
  }
}
