import { describe, expect, test } from "vitest";
import { PANEL_BIT, sharedShop, TABLE_ROUTER } from "./shop.ts";

const AIR = {
  driest: { relativeHumidityPercent: 30, temperatureC: 21.1 },
  wettest: { relativeHumidityPercent: 60, temperatureC: 21.1 },
};
const DOORS = {
  openings: [
    { name: "Left door", widthMm: 300, heightMm: 500, count: 2 },
    { name: "Drawer", widthMm: 500, heightMm: 300, grainAlong: "width", count: 3 },
  ],
  groove: { depthMm: 10, widthMm: 6.35 },
  thicknessMm: 19,
  woodId: "black-cherry",
  sawn: "flat",
  moisture: { percent: 8, tolerancePercent: 1 },
  climate: AIR,
};
const { name: _bit, notes: _notes, ...bit } = PANEL_BIT;
const { name: _router, ...router } = TABLE_ROUTER;
const raisingBit = { ...bit, form: { ...bit.form, tongueWidthMm: 10 } };
const RAISED = { ...DOORS, bit: raisingBit, router, mounting: "table" };

const { ask } = sharedShop();

const URL = "/v1/panels/size";

type Told = { code: string; text: string };

describe("panels for a case of doors and drawers", () => {
  test("flat: sizes, gaps through the year, edges and totals", async () => {
    const { status, body } = await ask("POST", URL, { body: DOORS });
    expect(status).toBe(200);
    // By hand, as in test/reference/panel.test.ts: (300 + 20 − 1.6)/1.011408 across the grain, 518.24 along it.
    expect(body.panels[0]).toMatchObject({ name: "Left door", count: 2, verdict: "fits-with-care" });
    expect(body.panels[0].width).toMatchObject({ cutMm: 314.8, moves: "across-grain" });
    expect(body.panels[1].width).toMatchObject({ cutMm: 518.2, moves: "along-grain" });
    expect(body.panels[0].width.now).toMatchObject({ gapMm: 2.6, engagementMm: 7.4, revealMm: null });
    // Wood Handbook Table 4-2, 70 °F: 6.2 % at 30 % humidity; 11.0 at 60.
    expect(body.moisture).toEqual({ nowPercent: 8, driestPercent: 6, wettestPercent: 11 });
    expect(body.totals.panels).toBe(5);
    expect(body.edges.map(({ count }: { count: number }) => count)).toEqual([10, 10]);
    expect(body.raising).toBeNull();
    expect(body.work).toBeNull();
  });

  test("raised: the tongue fits, and the edges have a plan with its time", async () => {
    const { status, body } = await ask("POST", URL, { body: RAISED });
    expect(status).toBe(200);
    expect(body.panels.map(({ tongue }: { tongue: { fit: string } }) => tongue.fit)).toEqual([
      "fits",
      "fits",
    ]);
    // Half of 88.9 less 22 mm is cut from each edge; what is in the groove does not show.
    expect(body.panels[0].width.now.revealMm).toBeCloseTo(33.45 - 7.4, 0);
    const { plan, time } = body.work;
    expect(plan.verdict).toBe("run-with-care");
    const settings = plan.steps.filter(({ code }: Told) => code === "set-height" || code === "set-fence");
    expect(time.setUps).toBe(settings.length);
    // Three minutes a setting, as the policy says.
    expect(time.settingUpSeconds).toBe(180 * settings.length);
    expect(time.totalSeconds).toBe(time.cuttingSeconds + time.settingUpSeconds);
    // Each pass along ten edges of 314.8 and ten of 518.2 mm.
    const alongEach = plan.passes.flatMap((pass: { secondsPerEdge: number[] }) => pass.secondsPerEdge);
    const byEdge = 10 * alongEach.reduce((sum: number, seconds: number) => sum + seconds, 0);
    expect(Math.abs(time.cuttingSeconds - byEdge)).toBeLessThan(10);
    expect(plan.passes.at(-1).heightMm).toBe(body.raising.heightMm);
  });

  test("the plan is the one that a plan for those edges would be", async () => {
    const { body } = await ask("POST", URL, { body: RAISED });
    const edges = body.edges.map(({ lengthMm, grain }: { lengthMm: number; grain: string }) => ({
      lengthMm,
      grain,
    }));
    const work = { lengthMm: 518.2, widthMm: 314.8, thicknessMm: 19, count: 5, faceDown: "best" };
    const cut = { kind: "panel", edges, thicknessMm: 19, work, ...body.raising };
    const request = { bit: raisingBit, router, mounting: "table", woodId: "black-cherry", cut };
    const { body: plan } = await ask("POST", "/v1/plans/preview", { body: request });
    expect(body.work.plan).toEqual(plan);
  });

  test("with a bit of the rack and a router of the shop", async () => {
    const { body: kept } = await ask("POST", "/v1/bits", { body: { ...PANEL_BIT, form: raisingBit.form } });
    const { body: keptRouter } = await ask("POST", "/v1/routers", { body: TABLE_ROUTER });
    const byId = { ...RAISED, bit: { id: kept.id }, router: { id: keptRouter.id } };
    const { body } = await ask("POST", URL, { body: byId });
    expect(body).toEqual((await ask("POST", URL, { body: RAISED })).body);
  });

  test("a panel already cut that would bottom is refused, and its edges are not planned", async () => {
    const openings = [{ widthMm: 300, heightMm: 500, panel: { widthMm: 319, heightMm: 518 } }];
    const { body } = await ask("POST", URL, { body: { ...RAISED, openings } });
    expect(body.panels[0].verdict).toBe("does-not-fit");
    expect(body.panels[0].findings.map(({ code }: Told) => code)).toContain("panel-would-bottom");
    expect(body.edges).toEqual([]);
    expect(body.work).toBeNull();
  });

  test("a bit that may not be held by hand gives sizes, but neither speed nor time", async () => {
    const { body } = await ask("POST", URL, { body: { ...RAISED, mounting: "handheld" } });
    expect(body.panels[0].width.cutMm).toBe(314.8);
    expect(body.work.plan).toMatchObject({ verdict: "do-not-run", passes: [], steps: [] });
    expect(body.work.time).toBeNull();
  });

  test("in the units asked for", async () => {
    const shallow = {
      ...DOORS,
      groove: { depthMm: 5, widthMm: 6.35 },
      openings: [{ widthMm: 900, heightMm: 500 }],
    };
    const metric = await ask("POST", `${URL}?units=metric`, { body: shallow });
    const imperial = await ask("POST", `${URL}?units=imperial`, { body: shallow });
    expect(metric.body.panels[0].width.display.cut).toMatch(/ mm$/);
    expect(imperial.body.panels[0].width.display.cut).toMatch(/ in$/);
    expect(imperial.body.panels[0].findings[0].text).toMatch(/ in /);
    expect(imperial.body.panels[0].findings[0].text).not.toMatch(/ mm/);
    expect(imperial.body.panels[0].width.cutMm).toBe(metric.body.panels[0].width.cutMm);
  });

  test("a stricter shop gets a smaller panel", async () => {
    const { body } = await ask("POST", URL, { body: { ...DOORS, policy: { panelClearanceMinMm: 2 } } });
    // (300 + 20 − 4)/1.011408 = 312.43.
    expect(body.panels[0].width.cutMm).toBe(312.4);
  });

  test("an apprentice may ask, nobody without a key", async () => {
    const person = await ask("POST", "/v1/people", { body: { name: "An apprentice", role: "member" } });
    const own = await ask("POST", "/v1/keys", { body: { name: "Apprentice", personId: person.body.id } });
    expect(own.body.key).toEqual(expect.any(String));
    expect((await ask("POST", URL, { body: DOORS, key: own.body.key })).status).toBe(200);
    expect((await ask("POST", URL, { body: DOORS, key: null })).status).toBe(401);
  });
});

describe("bad input is refused with every field named", () => {
  const { openings: _openings, ...withoutOpenings } = DOORS;
  const [door] = DOORS.openings;
  test.each<[string, object, [string, RegExp][]]>([
    ["no openings", { ...DOORS, openings: [] }, [["/openings", /1 to 50/]]],
    ["openings left out", withoutOpenings, [["/openings", /1 to 50/]]],
    ["an unknown wood", { ...DOORS, woodId: "unobtainium" }, [["/woodId", /GET \/v1\/woods/]]],
    ["a misspelt key", { ...DOORS, grooves: 1 }, [["/grooves", /groove/]]],
    [
      "an opening of no width",
      { ...DOORS, openings: [{ ...door, widthMm: 0 }] },
      [["/openings/0/widthMm", /50 to 3000/]],
    ],
    [
      "half a door",
      { ...DOORS, openings: [{ ...door, count: 1.5 }] },
      [["/openings/0/count", /whole number from 1 to 100/]],
    ],
    [
      "grain across the corner",
      { ...DOORS, openings: [{ ...door, grainAlong: "diagonal" }] },
      [["/openings/0/grainAlong", /height, width/]],
    ],
    [
      "text for a groove",
      { ...DOORS, groove: { depthMm: "10", widthMm: 6.35 } },
      [["/groove/depthMm", /a number from 3 to 40/]],
    ],
    ["wood wetter than green", { ...DOORS, moisture: { percent: 60 } }, [["/moisture/percent", /0 to 30/]]],
    [
      "air wetter than wet",
      { ...DOORS, climate: { ...AIR, wettest: { relativeHumidityPercent: 101, temperatureC: 21 } } },
      [["/climate/wettest/relativeHumidityPercent", /0 to 100/]],
    ],
    [
      "a driest air that is wetter than the wettest",
      { ...DOORS, climate: { driest: AIR.wettest, wettest: AIR.driest } },
      [["/climate/driest/relativeHumidityPercent", /0 to 30/]],
    ],
    [
      "a bit without a router",
      { ...DOORS, bit: raisingBit },
      [
        ["/router", /id of a router/],
        ["/mounting", /table, handheld/],
      ],
    ],
    [
      "a height without a bit",
      { ...DOORS, heightMm: 17 },
      [
        ["/bit", /id of a bit/],
        ["/router", /id of a router/],
        ["/mounting", /table, handheld/],
      ],
    ],
    [
      "a bit that is not on the rack",
      { ...RAISED, bit: { id: "bit_nothing" } },
      [["/bit/id", /of the rack/]],
    ],
    [
      "a bit that raises no panels",
      {
        ...RAISED,
        bit: { ...bit, massG: 100, form: { kind: "round-over", diameterMm: 38.1, radiusMm: 12.7 } },
      },
      [["/bit/form/kind", /panel-raising/]],
    ],
    ["a bit set out of reach", { ...RAISED, heightMm: 60 }, [["/heightMm", /at most 1\d\./]]],
    [
      "a pilot larger than its bit",
      { ...RAISED, bit: { ...bit, form: { ...bit.form, pilotDiameterMm: 60, diameterMm: 50 } } },
      [["/bit/form/pilotDiameterMm", /less than 50/]],
    ],
    ["a fence behind the pilot", { ...RAISED, fenceMm: 5 }, [["/fenceMm", /at least 11/]]],
    [
      "a policy that would loosen",
      { ...DOORS, policy: { panelClearanceMinMm: 0.1 } },
      [["/policy/panelClearanceMinMm", /0\.8 to 10/]],
    ],
  ])("%s", async (_name, body, faults) => {
    const answer = await ask("POST", URL, { body });
    expect(answer.status).toBe(422);
    expect(answer.body.code).toBe("not-valid");
    const errors: { pointer: string; accepted: string }[] = answer.body.errors;
    expect(errors.map(({ pointer }) => pointer).sort()).toEqual(faults.map(([pointer]) => pointer).sort());
    for (const [pointer, accepted] of faults) {
      expect(errors.find((error) => error.pointer === pointer)?.accepted).toMatch(accepted);
    }
  });
});
