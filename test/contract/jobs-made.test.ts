import { describe, expect, test } from "vitest";
import { addBit, addSomebody, made } from "./crib.ts";
import { kitchenBits, kitchenJob } from "./kitchen.ts";
import { act, changesOf, createJob, kitchenShop, readyJob } from "./kitchen-shop.ts";

const kitchen = kitchenShop();

describe("what a job rests on", () => {
  test("is still so as long as nothing changes", async () => {
    const job = await readyJob(kitchen);
    expect(await changesOf(kitchen, job.id)).toEqual({ jobId: job.id, isCurrent: true, changed: [] });
  });

  test("says that a bit was sharpened, by how much, and is followed by computing again", async () => {
    const job = await createJob(kitchen);
    await made(kitchen.shop, `/v1/bits/${kitchen.ids.panelId}/sharpenings`, { diameterMm: 88.5 });
    const { isCurrent, changed } = await changesOf(kitchen, job.id);
    expect(isCurrent).toBe(false);
    expect(changed).toMatchObject([{ code: "bit-sharpened", bitId: kitchen.ids.panelId }]);
    expect(changed[0].text).toContain("88.9 mm");
    expect(changed[0].text).toContain("88.5 mm");
    expect((await act(kitchen, job.id, "ready")).body.code).toBe("job-not-ready");
    expect((await act(kitchen, job.id, "compute")).status).toBe(200);
    expect(await changesOf(kitchen, job.id)).toMatchObject({ isCurrent: true });
  });

  test("says that a bit is held, and who has one that was lent", async () => {
    const job = await createJob(kitchen);
    await made(kitchen.shop, `/v1/bits/${kitchen.ids.panelId}/hold`, { reason: "A crack." });
    await made(kitchen.shop, "/v1/loans", {
      bitId: kitchen.ids.copeId,
      personId: kitchen.other.id,
      dueAt: "2026-12-02T08:00:00Z",
    });
    const { changed } = await changesOf(kitchen, job.id);
    expect(changed).toContainEqual(
      expect.objectContaining({ code: "bit-out-of-use", bitId: kitchen.ids.panelId }),
    );
    expect(changed).toContainEqual(
      expect.objectContaining({ code: "bit-elsewhere", bitId: kitchen.ids.copeId }),
    );
  });
});

describe("bits of a ready job", () => {
  test("are kept for its days: two jobs that collide are told, with what would do instead", async () => {
    const first = await readyJob(kitchen);
    const { body: kept } = await kitchen.shop.ask("GET", `/v1/reservations?jobId=${first.id}`);
    expect(kept.data).toHaveLength(3);
    expect(kept.data[0]).toMatchObject({ from: "2026-12-01", until: "2026-12-04", state: "kept" });
    const second = await createJob(kitchen);
    const refused = (await act(kitchen, second.id, "ready")).body;
    expect(refused).toMatchObject({ status: 409, code: "job-not-ready" });
    expect(refused.detail).toContain(first.id);
    const later = await createJob(kitchen, { startsOn: "2026-12-05", wantedOn: "2026-12-06" });
    expect((await act(kitchen, later.id, "ready")).status).toBe(200);
    const spare = await addBit(kitchen.shop, kitchenBits(kitchen.ids.radiusMm).panel);
    const third = await createJob(kitchen);
    expect(third.work.findings).toContainEqual(
      expect.objectContaining({ code: "bit-kept", bitId: kitchen.ids.panelId, insteadBitIds: [spare.id] }),
    );
  });

  test("are not lent to others over its days, but for the job, and before it", async () => {
    const job = await readyJob(kitchen);
    const lend = (given: object) =>
      kitchen.shop.ask("POST", "/v1/loans", {
        body: { bitId: kitchen.ids.panelId, personId: kitchen.other.id, ...given },
      });
    const spare = await addBit(kitchen.shop, kitchenBits(kitchen.ids.radiusMm).panel);
    const { body } = await lend({ dueAt: "2026-12-02T08:00:00Z" });
    expect(body).toMatchObject({ status: 409, code: "bit-kept" });
    expect(body.detail).toContain(job.id);
    expect(body.detail).toContain(spare.id);
    const before = await lend({ dueAt: "2026-11-30T08:00:00Z" });
    expect(before.status).toBe(201);
    await made(kitchen.shop, `/v1/loans/${before.body.id}/return`, {});
    const forJob = await lend({ dueAt: "2026-12-02T08:00:00Z", jobId: job.id });
    expect(forJob.body).toMatchObject({ jobId: job.id });
    expect((await changesOf(kitchen, job.id)).isCurrent).toBe(true);
  });

  test("go to one of two jobs that are made ready at the same moment", async () => {
    const [one, two] = [await createJob(kitchen), await createJob(kitchen)];
    const answers = await Promise.all([act(kitchen, one.id, "ready"), act(kitchen, two.id, "ready")]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
    const { body } = await kitchen.shop.ask("GET", `/v1/reservations?bitId=${kitchen.ids.copeId}&state=kept`);
    expect(body.data).toHaveLength(1);
  });
});

describe("a job under way", () => {
  test("logs the use of each set-up that is made, and ends by itself with the last", async () => {
    let job = await readyJob(kitchen);
    const minutes = job.work.minutes.total.usualMin;
    const count = job.work.setups.length;
    for (let left = count; left > 0; left -= 1) {
      const [setup] = job.work.setups;
      const answer = await act(kitchen, job.id, "set-ups-made", { setupId: setup.id, outcomes: ["fine"] });
      expect(answer.status, answer.text).toBe(200);
      job = answer.body;
      expect(job.work.setups).toHaveLength(left - 1);
      expect(job.work.minutes.total.usualMin).toBeLessThan(minutes);
    }
    expect(job).toMatchObject({ state: "done" });
    const { body: uses } = await kitchen.shop.ask("GET", `/v1/uses?bitId=${kitchen.ids.stickId}`);
    // 52 rails of 0.3 m and 52 stiles of 0.7 m along one side, in each of two passes.
    expect(uses.data.map(({ metres }: { metres: number }) => metres)).toEqual([52, 52]);
    expect(uses.data[0]).toMatchObject({
      personId: kitchen.member.id,
      woodId: "black-cherry",
      outcomes: ["fine"],
    });
    const { body: kept } = await kitchen.shop.ask("GET", `/v1/reservations?jobId=${job.id}&state=kept`);
    expect(kept.data).toEqual([]);
    expect((await act(kitchen, job.id, "compute")).body.code).toBe("invalid-state");
  });

  test("goes on slower and lighter after chatter, with a sentence, and keeps what was not touched", async () => {
    const job = await readyJob(kitchen);
    const isOf = (bitId: string) => (setup: { bitId: string }) => setup.bitId === bitId;
    const before = job.work.setups.filter(isOf(kitchen.ids.stickId));
    const [rough] = before;
    const body = { setupId: rough.id, outcomes: ["chattered"] };
    const { body: next } = await act(kitchen, job.id, "set-ups-made", body);
    expect(next.state).toBe("under-way");
    const after = next.work.setups.filter(isOf(kitchen.ids.stickId));
    expect(after.length).toBeGreaterThan(0);
    for (const setup of after) expect(setup.rpm).toBeLessThan(rough.rpm);
    expect(next.work.findings).toContainEqual(
      expect.objectContaining({ code: "after-mishap", bitId: kitchen.ids.stickId }),
    );
    expect(next.work.setups.filter(isOf(kitchen.ids.copeId))).toEqual(
      job.work.setups
        .filter(isOf(kitchen.ids.copeId))
        .map((setup: object) => expect.objectContaining({ id: Object(setup).id })),
    );
    // The set-up that was planned before is no more: nothing is logged under its name.
    const gone = await act(kitchen, job.id, "set-ups-made", { setupId: before[1].id, outcomes: ["fine"] });
    expect(gone.body.errors).toMatchObject([{ pointer: "/setupId" }]);
  });

  test("holds a bit that came loose, and says that it cannot go on with it", async () => {
    const job = await readyJob(kitchen);
    const [setup] = job.work.setups;
    const { body: next } = await act(kitchen, job.id, "set-ups-made", {
      setupId: setup.id,
      outcomes: ["came-loose"],
    });
    const { body: bit } = await kitchen.shop.ask("GET", `/v1/bits/${setup.bitId}`);
    expect(bit.state).toBe("held");
    expect(next.work.verdict).toBe("do-not-run");
  });

  test("is not done because nothing that is left can be planned", async () => {
    const [, , panel] = kitchenJob(kitchen.ids).parts;
    const job = await readyJob(kitchen, { parts: [panel] });
    const [setup] = job.work.setups;
    const made = { setupId: setup.id, outcomes: ["came-loose"] };
    const { body: next } = await act(kitchen, job.id, "set-ups-made", made);
    expect(next).toMatchObject({ state: "under-way", work: { verdict: "do-not-run", setups: [] } });
  });

  test("keeps everything of one request, or nothing: the same again is the same answer", async () => {
    const job = await readyJob(kitchen);
    const [setup] = job.work.setups;
    const send = () =>
      kitchen.shop.ask("POST", `/v1/jobs/${job.id}/set-ups-made`, {
        body: { setupId: setup.id, outcomes: ["fine"] },
        key: kitchen.member.key,
        headers: { "Idempotency-Key": `made ${job.id}`.replace(" ", "-") },
      });
    const [first, second] = [await send(), await send()];
    expect(second.text).toBe(first.text);
    const { body: uses } = await kitchen.shop.ask("GET", `/v1/uses?bitId=${setup.bitId}`);
    expect(uses.data).toHaveLength(1);
  });
});

test("settings are drafted from every different set-up of a job in one request", async () => {
  const course = await made(kitchen.shop, "/v1/courses", {
    ...{ name: "First year", policy: {}, requirements: {}, isTwoPerson: false },
  });
  const job = await createJob(kitchen);
  const asked = { courseId: course.id, supervision: "beside", validUntil: "2027-01-31T08:00:00Z" };
  const { status, body, text } = await kitchen.shop.ask("POST", `/v1/jobs/${job.id}/approvals`, {
    body: asked,
  });
  expect(status, text).toBe(200);
  expect(body.approvals).toHaveLength(3);
  for (const { approvalId, planId } of body.approvals) {
    const { body: approval } = await kitchen.shop.ask("GET", `/v1/approvals/${approvalId}`);
    expect(approval).toMatchObject({ state: "draft", planId, courseId: course.id });
  }
});

test("a job of a course is seen by those who take part in it", async () => {
  const student = await addSomebody(kitchen.shop, "student");
  const course = await made(kitchen.shop, "/v1/courses", {
    ...{ name: "Second year", policy: {}, requirements: {}, isTwoPerson: false },
  });
  const job = await createJob(kitchen, { courseId: course.id });
  const read = () => kitchen.shop.ask("GET", `/v1/jobs/${job.id}`, { key: student.key });
  expect((await read()).status).toBe(404);
  await made(kitchen.shop, `/v1/courses/${course.id}/enrolments`, { personId: student.id, part: "student" });
  expect((await read()).status).toBe(200);
});
