import { describe, expect, it } from "vitest";
import type { Bit } from "../bit/bit.ts";
import type { FormKind } from "../bit/form/registry.ts";
import type { CutKind } from "../bit/form/usual-cut.ts";
import { makePlan } from "../plan/make-plan.ts";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { woodById } from "../wood/registry.ts";
import type { Wood } from "../wood/wood.ts";
import { closesCircle } from "./links.ts";
import { type PartPlace, type PartSize, partEdges, partWork } from "./part.ts";
import type { PlannedCut } from "./set-up.ts";
import { jobSetups } from "./set-ups.ts";

const PAIR = {
  diameterMm: 41,
  grooveWidthMm: 6.35,
  grooveDepthMm: 9.5,
  radiusMm: 6,
  landMm: 3.2,
  pilot: "bearing",
} as const;
const large = { shankDiameterMm: 12.7, wings: 2, markedMaxRpm: 18_000 };
const BITS: Readonly<Record<string, Bit>> = {
  cope: { form: { kind: "cope", ...PAIR }, ...large },
  stick: { form: { kind: "stick", ...PAIR }, ...large },
  straight: { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, ...large },
  chamfer: {
    form: { kind: "chamfer", diameterMm: 30, angleDeg: 45, pilotDiameterMm: 10 },
    ...large,
  },
};
const ROUTER = {
  minRpm: 8000,
  maxRpm: 22_000,
  dial: { marks: { first: 1, last: 6 } },
  inputPowerW: 1800,
};
const CHERRY = wood("black-cherry");
const RAIL = { lengthMm: 300, widthMm: 57, thicknessMm: 19 };
const STILE = { lengthMm: 600, widthMm: 57, thicknessMm: 19 };

type Asked = {
  readonly part?: number;
  readonly bit: string;
  readonly kind: CutKind;
  readonly along: PartPlace;
  readonly size?: PartSize;
  readonly pieces?: number;
  readonly router?: string;
  readonly isWasteFor?: number;
};

describe("the set-ups of a job", () => {
  it("are one for each pass, in the order of the passes", () => {
    const setups = jobSetups([planned({ bit: "stick", kind: "joint", along: "one-side" })]);
    expect(setups.map(({ kind, after }) => ({ kind, after }))).toEqual([
      { kind: "rough", after: [] },
      { kind: "finish", after: [{ setupId: "setup-1", rule: "passes-in-order" }] },
    ]);
  });

  it("are shared by alike cuts in different parts, and say what each piece of each takes", () => {
    const setups = jobSetups([
      planned({ part: 0, bit: "stick", kind: "joint", along: "one-side", size: RAIL, pieces: 48 }),
      planned({ part: 1, bit: "stick", kind: "joint", along: "one-side", size: STILE, pieces: 50 }),
    ]);
    expect(setups).toHaveLength(2);
    expect(setups[1]?.runs).toMatchObject([
      { cut: 0, pass: 2, pieces: 48, metresPerPiece: 0.3 },
      { cut: 1, pass: 2, pieces: 50, metresPerPiece: 0.6 },
    ]);
  });

  it("are not shared by grooves in other places of the face", () => {
    const groove = planned({ bit: "straight", kind: "groove", along: "face-across" });
    const at = (...positions: readonly number[]) =>
      jobSetups(positions.map((positionMm) => ({ ...groove, positionMm }))).length;
    expect(at(100, 300)).toBe(2 * at(100));
    expect(at(100, 100)).toBe(at(100));
  });

  it("are not shared by another router", () => {
    const cut = { bit: "stick", kind: "joint", along: "one-side" } as const;
    expect(jobSetups([planned(cut), planned({ ...cut, part: 1, router: "other" })])).toHaveLength(4);
  });

  it("cope before they stick, in either order of the list (common practice)", () => {
    const cope = planned({ bit: "cope", kind: "joint", along: "both-ends" });
    const stick = planned({ bit: "stick", kind: "joint", along: "one-side" });
    for (const cuts of [
      [cope, stick],
      [stick, cope],
    ]) {
      const setups = jobSetups(cuts);
      const ofCope = setups.filter(({ bitId }) => bitId === "cope").map(({ id }) => id);
      for (const setup of setups.filter(({ bitId }) => bitId === "stick")) {
        for (const setupId of ofCope) {
          expect(setup.after).toContainEqual({ setupId, rule: "cope-before-stick" });
        }
      }
    }
  });

  it("cut end grain before long grain, and grooves before what takes their edge away (common practice)", () => {
    const ends = planned({ bit: "chamfer", kind: "edge", along: "both-ends" });
    const groove = planned({ bit: "straight", kind: "groove", along: "face-along" });
    const sides = planned({ bit: "straight", kind: "rabbet", along: "both-sides" });
    const setups = jobSetups([sides, ends, groove]);
    const rules = new Map(setups.map(({ bitId, runs, after }) => [`${bitId} ${runs[0]?.cut}`, after]));
    expect(rules.get("straight 2")?.filter(({ rule }) => rule !== "passes-in-order")).toEqual([]);
    expect(rules.get("chamfer 1")?.map(({ rule }) => rule)).toContain("references-before-they-are-cut-away");
    expect(rules.get("straight 0")?.map(({ rule }) => rule)).toContain("end-grain-before-long");
  });

  it("take the waste out before the cut it is for", () => {
    const cut = { kind: "groove", along: "face-across" } as const;
    const setups = jobSetups([
      planned({ ...cut, bit: "straight" }),
      planned({ ...cut, bit: "straight", router: "other", isWasteFor: 0 }),
    ]);
    const main = setups.filter(({ routerId }) => routerId === "router");
    expect(main[0]?.after.map(({ rule }) => rule)).toContain("waste-before-undercut");
  });

  it("are kept apart where sharing would make one wait for itself", () => {
    // In one part A is cut at the ends and B along the sides, in the other B at the ends and A along the sides.
    const setups = jobSetups([
      atEnds(planned({ part: 0, bit: "chamfer", kind: "edge", along: "both-sides" })),
      planned({ part: 0, bit: "chamfer", kind: "edge", along: "both-sides", router: "other" }),
      planned({ part: 1, bit: "chamfer", kind: "edge", along: "both-sides" }),
      atEnds(planned({ part: 1, bit: "chamfer", kind: "edge", along: "both-sides", router: "other" })),
    ]);
    expect(isWithoutCircle(setups)).toBe(true);
    expect(setups.map(({ routerId, runs }) => [routerId, runs.map(({ cut }) => cut)])).toEqual([
      ["router", [0, 2]],
      ["router", [0, 2]],
      ["other", [1]],
      ["other", [1]],
      ["other", [3]],
      ["other", [3]],
    ]);
  });

  it("leave out the passes that have been made, at whatever settings they were planned then", () => {
    const cut = planned({ bit: "stick", kind: "joint", along: "one-side" });
    const [rough, finish] = cut.plan.passes.map(({ pass }) => pass);
    if (rough === undefined || finish === undefined) throw new Error("two passes were expected");
    const left = (made: PlannedCut["made"]) =>
      jobSetups([{ ...cut, made: made ?? [] }]).map(({ kind }) => kind);
    expect(left([rough])).toEqual(["finish"]);
    expect(left([{ ...rough, fenceMm: rough.fenceMm + 0.3 }])).toEqual(["rough", "finish"]);
    expect(left([{ ...rough, fenceMm: rough.fenceMm - 0.3 }])).toEqual(["finish"]);
    expect(left([finish])).toEqual([]);
  });

  it("are none for a cut that must not be run", () => {
    const plan = { ...planned({ bit: "stick", kind: "joint", along: "one-side" }) };
    const refused = {
      ...plan,
      plan: { ...plan.plan, passes: [], speed: { ...plan.plan.speed, setting: undefined } },
    };
    expect(jobSetups([refused])).toEqual([]);
  });

  it("hold every pass of every cut once and never wait in a circle, whatever four cuts meet in two parts", () => {
    const choices = [0, 1].flatMap((part) =>
      ["router", "other"].flatMap((router) => {
        const sides = planned({ part, bit: "chamfer", kind: "edge", along: "both-sides", router });
        return [sides, atEnds(sides)];
      }),
    );
    const jobs = choices.flatMap((one) =>
      choices.flatMap((two) => choices.flatMap((three) => choices.map((four) => [one, two, three, four]))),
    );
    for (const cuts of jobs) {
      const setups = jobSetups(cuts);
      const made = setups.flatMap(({ runs }) => runs.map(({ cut, pass }) => `${cut} ${pass}`)).sort();
      const wanted = cuts
        .flatMap(({ plan }, cut) => plan.passes.map(({ pass }) => `${cut} ${pass.number}`))
        .sort();
      expect(made).toEqual(wanted);
      expect(isWithoutCircle(setups)).toBe(true);
    }
  });
});

/** The same cut at the ends, at the same settings: as a guide that serves both would make it. */
function atEnds(planned: PlannedCut): PlannedCut {
  return { ...planned, cut: { ...planned.cut, edges: partEdges(RAIL, "both-ends") } };
}

function isWithoutCircle(setups: ReturnType<typeof jobSetups>): boolean {
  return !closesCircle(
    setups.flatMap(({ id, after }) =>
      after.map(({ setupId, rule }) => ({ from: setupId, to: id, why: rule })),
    ),
  );
}

function planned({
  part = 0,
  bit: name,
  kind,
  along,
  size = RAIL,
  pieces = 4,
  router = "router",
  isWasteFor,
}: Asked) {
  const bit = BITS[name];
  if (bit === undefined) throw new Error(name);
  const piece = { edges: partEdges(size, along), work: partWork(size, pieces) };
  const cut =
    kind === "groove"
      ? { kind, ...piece, depthMm: 6 }
      : kind === "rabbet"
        ? { kind, ...piece, depthMm: 6, widthMm: 8, thicknessMm: size.thicknessMm }
        : kind === "edge"
          ? { kind, ...piece, thicknessMm: size.thicknessMm }
          : { kind: "joint" as const, ...piece, thicknessMm: size.thicknessMm };
  const form: FormKind = bit.form.kind;
  const input = {
    bit,
    router: ROUTER,
    mounting: "table",
    wood: CHERRY,
    cut,
    policy: DEFAULT_POLICY,
  } as const;
  const plannedCut: PlannedCut = {
    part,
    bitId: name,
    routerId: router,
    mounting: "table",
    form,
    wood: CHERRY,
    cut,
    pieces,
    plan: makePlan(input),
    isWasteFor,
  };
  return plannedCut;
}

function wood(id: string): Wood {
  const found = woodById(id);
  if (found === undefined) throw new Error(id);
  return found;
}
