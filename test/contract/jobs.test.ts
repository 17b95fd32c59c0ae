import { describe, expect, test } from "vitest";
import { addBit, lastSequence, made } from "./crib.ts";
import { kitchenBits, kitchenJob } from "./kitchen.ts";
import { act, createJob, kitchenShop, readyJob } from "./kitchen-shop.ts";

const kitchen = kitchenShop();

const namesOf = (job: { work: { setups: { bitId: string; kind: string }[] } }) =>
  job.work.setups.map(({ bitId, kind }) => `${nameOf(bitId)} ${kind}`);
const nameOf = (bitId: string) => {
  const { copeId, stickId, panelId } = kitchen.ids;
  return { [copeId]: "cope", [stickId]: "stick", [panelId]: "panel" }[bitId] ?? bitId;
};

describe("a job from its list of parts", () => {
  test("shares set-ups across parts, copes before it sticks, and says what each piece of each part takes", async () => {
    const job = await createJob(kitchen);
    expect(job).toMatchObject({ state: "draft", personId: kitchen.member.id, made: [], version: 1 });
    expect(job.work.verdict).not.toBe("do-not-run");
    const order = namesOf(job);
    expect(order.indexOf("cope finish")).toBeLessThan(order.indexOf("stick rough"));
    const stick = job.work.setups.find((setup: { bitId: string }) => setup.bitId === kitchen.ids.stickId);
    expect(stick.runs.map(({ name, pieces }: { name: string; pieces: number }) => [name, pieces])).toEqual([
      ["Rail", 52],
      ["Stile", 52],
    ]);
    expect(stick.after.map(({ rule }: { rule: string }) => rule)).toContain("cope-before-stick");
    expect(job.work.bits.map(({ bitId }: { bitId: string }) => nameOf(bitId)).sort()).toEqual([
      "cope",
      "panel",
      "stick",
    ]);
    expect(job.work.order).toMatchObject({ isProvenLeast: true, gapPercent: 0 });
    for (const cut of job.work.cuts) {
      const plan = await made(kitchen.shop, "/v1/plans/preview", cut.request);
      expect([plan.digest, plan.speed.rpm, plan.passes.length]).toEqual([cut.digest, cut.rpm, cut.passes]);
    }
  });

  test("is previewed without being kept, and says the same", async () => {
    const before = await lastSequence(kitchen.shop);
    const { computedAt: _at, ...preview } = await made(
      kitchen.shop,
      "/v1/jobs/preview",
      kitchenJob(kitchen.ids),
      kitchen.member.key,
    );
    expect(await lastSequence(kitchen.shop)).toBe(before);
    const { work } = await createJob(kitchen);
    expect(work).toMatchObject(preview);
  });

  test("is listed in short, found by its state, and exported as one row for each part at each set-up", async () => {
    const job = await createJob(kitchen);
    const { body } = await kitchen.shop.ask(
      "GET",
      `/v1/jobs?state=draft&personId=${kitchen.member.id}&limit=200`,
    );
    expect(body.data.at(-1)).toMatchObject({
      id: job.id,
      ...{ parts: 3, pieces: 129, setups: job.work.setups.length, made: 0 },
      minutes: job.work.minutes.total,
    });
    const { text, headers } = await kitchen.shop.ask("GET", `/v1/jobs/${job.id}/export`, {
      key: kitchen.member.key,
    });
    expect(headers["content-type"]).toBe("text/csv; charset=utf-8");
    const runs = job.work.setups.flatMap(({ runs }: { runs: object[] }) => runs);
    expect(text.trim().split("\r\n")).toHaveLength(1 + runs.length);
  });

  test("names every part, cut and machine that cannot be taken, and changes nothing", async () => {
    const before = await lastSequence(kitchen.shop);
    const [rail] = kitchenJob(kitchen.ids).parts;
    const cuts = [
      { along: "both-ends", wanted: { by: "bit", bitId: "bit_0", cut: { kind: "joint" } } },
      { along: "both-ends", wanted: { by: "form", form: "cove", sizes: { radius: 6 } } },
    ];
    const asked = async (given: object) =>
      (
        await kitchen.shop.ask("POST", "/v1/jobs", { body: { ...kitchenJob(kitchen.ids), ...given } })
      ).body.errors.map(({ pointer }: { pointer: string }) => pointer);
    expect(await asked({ woodId: "no-wood", parts: [{ ...rail, cuts: cuts.slice(0, 1) }] })).toEqual([
      "/woodId",
      "/parts/0/cuts/0/wanted/bitId",
    ]);
    expect(await asked({ parts: [{ ...rail, cuts: cuts.slice(1) }] })).toEqual([
      "/parts/0/cuts/0/wanted/sizes/radius",
    ]);
    const elsewhere = { routerId: kitchen.ids.routerId, mounting: "handheld" };
    const cut = { along: "both-ends", wanted: { by: "form", form: "cope" }, machine: elsewhere };
    expect(await asked({ parts: [{ ...rail, cuts: [cut] }] })).toEqual(["/parts/0/cuts/0/machine"]);
    expect(await asked({ startsOn: "2026-12-05", wantedOn: "2026-12-01" })).toEqual(["/wantedOn"]);
    expect(await asked({ parts: Array(201).fill(rail) })).toEqual(["/parts"]);
    expect(await lastSequence(kitchen.shop)).toBe(before);
  });

  test("says which bit is missing, and never gives a speed for it", async () => {
    const cuts = [{ along: "one-side", wanted: { by: "form", form: "cove", sizes: { radiusMm: 6 } } }];
    const [rail] = kitchenJob(kitchen.ids).parts;
    const { work } = await createJob(kitchen, { parts: [{ ...rail, cuts }] });
    expect(work.verdict).toBe("do-not-run");
    expect(work.findings).toMatchObject([{ code: "no-bit", severity: "refuse", part: 1, cut: 1 }]);
    expect(work.cuts).toMatchObject([{ bitId: null, rpm: null, mark: null, passes: 0 }]);
    expect(work.setups).toEqual([]);
  });

  test("takes the better of two bits of a form, and says why not the other", async () => {
    const spare = await addBit(kitchen.shop, kitchenBits(kitchen.ids.radiusMm).cope);
    await made(kitchen.shop, `/v1/bits/${kitchen.ids.copeId}/hold`, { reason: "A chipped tip." });
    const { work } = await createJob(kitchen);
    const cope = work.cuts.find(({ cut, part }: { cut: number; part: number }) => part === 1 && cut === 1);
    expect(cope.bitId).not.toBe(kitchen.ids.copeId);
    expect(cope.notTaken).toContainEqual(
      expect.objectContaining({ bitId: kitchen.ids.copeId, code: "out-of-use" }),
    );
    await made(kitchen.shop, `/v1/bits/${spare.id}/hold`, { reason: "Put away after the test." });
  });

  test("wastes a dovetail groove with a straight bit first", async () => {
    const dovetail = await addBit(kitchen.shop, {
      name: "Dovetail",
      form: { kind: "dovetail", diameterMm: 19, cuttingLengthMm: 16, angleDeg: 8 },
      massG: 60,
      shankDiameterMm: 12.7,
      wings: 2,
    });
    await addBit(kitchen.shop, {
      name: "Straight",
      form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
      massG: 58,
      shankDiameterMm: 12.7,
      wings: 2,
    });
    const wanted = { by: "bit", bitId: dovetail.id, cut: { kind: "groove", depthMm: 12 } };
    const [rail] = kitchenJob(kitchen.ids).parts;
    const { work } = await createJob(kitchen, {
      parts: [{ ...rail, cuts: [{ along: "face-across", wanted }] }],
    });
    expect(work.cuts.map(({ isWasteFor }: { isWasteFor?: number }) => isWasteFor)).toEqual([1, undefined]);
    const last = work.setups.at(-1);
    expect(last).toMatchObject({ bitId: dovetail.id });
    expect(last.after.map(({ rule }: { rule: string }) => rule)).toContain("waste-before-undercut");
  });
});

describe("a job that is changed", () => {
  test("is computed again, for the version that was read only", async () => {
    const job = await createJob(kitchen);
    const patch = (version: number, body: object) =>
      kitchen.shop.ask("PATCH", `/v1/jobs/${job.id}`, {
        body,
        key: kitchen.member.key,
        headers: { "If-Match": `"${version}"` },
      });
    const [rail] = kitchenJob(kitchen.ids).parts;
    const { body } = await patch(1, { parts: [rail] });
    expect(body).toMatchObject({ version: 2 });
    expect(namesOf(body)).not.toContain("panel finish");
    expect((await patch(1, { name: "Older" })).status).toBe(412);
    const { body: events } = await kitchen.shop.ask("GET", `/v1/events?subjectId=${job.id}&limit=10`);
    expect(events.data.map(({ type }: { type: string }) => type)).toEqual(["job.created", "job.changed"]);
    expect(events.data[1].data.after.parts).toHaveLength(1);
    expect(events.data[1].data.after.work).toBeUndefined();
  });

  test("is settled once it is ready: reopened first, its bits are free again", async () => {
    const job = await readyJob(kitchen);
    const change = { body: { name: "Other" }, key: kitchen.member.key, headers: { "If-Match": '"2"' } };
    expect((await kitchen.shop.ask("PATCH", `/v1/jobs/${job.id}`, change)).body.code).toBe("invalid-state");
    expect((await act(kitchen, job.id, "reopen")).body.state).toBe("draft");
    const { body } = await kitchen.shop.ask("GET", `/v1/reservations?jobId=${job.id}&state=kept`);
    expect(body.data).toEqual([]);
    expect((await act(kitchen, job.id, "ready")).body.state).toBe("ready");
  });

  test("is nobody else's: another member is answered as if it did not exist", async () => {
    const job = await createJob(kitchen);
    expect((await kitchen.shop.ask("GET", `/v1/jobs/${job.id}`, { key: kitchen.other.key })).status).toBe(
      404,
    );
    expect((await act(kitchen, job.id, "end", { as: "dropped" }, kitchen.other.key)).status).toBe(404);
  });
});
