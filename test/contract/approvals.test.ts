import { describe, expect, test } from "vitest";
import {
  check,
  codesOf,
  DAY_MS,
  draft,
  inDays,
  issued,
  made,
  openCourse,
  openSchool,
  school,
} from "./school.ts";
import { PANEL_BIT } from "./shop.ts";

openSchool();

describe("who may issue", () => {
  test("only an instructor of that course, or a manager", async () => {
    const courseId = await openCourse();
    const refused = await draft(courseId, {}, school.keys.other);
    expect(refused.status).toBe(403);
    expect(refused.body.code).toBe("not-yours");
    expect((await draft(courseId, {}, school.keys.student)).status).toBe(403);
    expect((await draft(courseId)).status).toBe(201);
  });

  test("another one than who drafted, if the course asks for two", async () => {
    const courseId = await openCourse({ isTwoPerson: true });
    const { body } = await draft(courseId);
    const own = await school.shop.ask("POST", `/v1/approvals/${body.id}/issue`, { key: school.keys.teacher });
    expect(own.status).toBe(409);
    expect(own.body.code).toBe("second-person-needed");
    const second = await school.shop.ask("POST", `/v1/approvals/${body.id}/issue`, {
      key: school.keys.head,
    });
    expect(second.body.state).toBe("issued");
  });

  test("nobody, if the plan must not be run under the course's policy", async () => {
    const courseId = await openCourse({ policy: { speedMaxRpm: 5000 } });
    const refused = await draft(courseId);
    expect(refused.status).toBe(409);
    expect(refused.body.code).toBe("may-not-run");
  });
});

describe("a course's policy", () => {
  test("tightens the setting, and never loosens it", async () => {
    const usual = await issued(await openCourse());
    const strict = await issued(await openCourse({ policy: { rimSpeedMaxMPerS: 50 } }));
    expect(strict.setting.ceilingRpm).toBeLessThan(usual.setting.ceilingRpm);
    const loose = await issued(await openCourse({ policy: { rimSpeedMaxMPerS: 80 } }));
    expect(loose.setting).toEqual(usual.setting);
  });
});

describe("what a member sees", () => {
  test("what is issued in their own courses, and no draft", async () => {
    const courseId = await openCourse();
    const { body: drafted } = await draft(courseId);
    const { id } = await issued(courseId);
    const seen = await school.shop.ask("GET", `/v1/approvals?courseId=${courseId}`, {
      key: school.keys.student,
    });
    expect(seen.body.data.map((each: { id: string }) => each.id)).toEqual([id]);
    for (const url of [`/v1/approvals/${id}`, `/v1/approvals/${id}/sheet`, `/v1/approvals/${id}/grounds`]) {
      expect((await school.shop.ask("GET", url, { key: school.keys.student })).status, url).toBe(200);
      expect((await school.shop.ask("GET", url, { key: school.keys.stranger })).status, url).toBe(404);
    }
    expect(
      (await school.shop.ask("GET", `/v1/approvals/${drafted.id}`, { key: school.keys.student })).status,
    ).toBe(404);
    const none = await school.shop.ask("GET", "/v1/approvals", { key: school.keys.stranger });
    expect(none.body.data).toEqual([]);
  });

  test("a setting for others is not theirs", async () => {
    const { id } = await issued(await openCourse(), { personIds: [school.people.stranger] });
    expect((await school.shop.ask("GET", `/v1/approvals/${id}`, { key: school.keys.student })).status).toBe(
      404,
    );
    expect(codesOf(await check({ mark: 2 }))).toContain("not-for-this-person");
  });

  test("their own day and qualifications, nobody else's", async () => {
    const courseId = await openCourse({ requirements: { isParentalConsentNeeded: true } });
    await issued(courseId);
    const day = await school.shop.ask(
      "GET",
      `/v1/courses/${courseId}/students/${school.people.student}/today`,
      {
        key: school.keys.student,
      },
    );
    expect(day.body.missing).toMatchObject([{ code: "parental-consent-missing" }]);
    expect(day.body.settings).toEqual([]);
    const foreign = await school.shop.ask(
      "GET",
      `/v1/courses/${courseId}/students/${school.people.student}/today`,
      {
        key: school.keys.stranger,
      },
    );
    expect(foreign.status).toBe(404);
    expect(
      (await school.shop.ask("GET", `/v1/courses/${courseId}/needs`, { key: school.keys.student })).status,
    ).toBe(403);
    const needs = await school.shop.ask("GET", `/v1/courses/${courseId}/needs`, { key: school.keys.teacher });
    expect(needs.body.data).toMatchObject([
      { personId: school.people.student, missing: [{ code: "parental-consent-missing" }] },
    ]);
  });
});

describe("a setting's end", () => {
  test("by hand is for good", async () => {
    const { id, setting } = await issued(await openCourse());
    const ended = await made(
      `/v1/approvals/${id}/withdraw`,
      { reason: "The guard is broken." },
      school.keys.teacher,
    );
    expect(ended).toMatchObject({ state: "withdrawn", withdrawal: { reason: "The guard is broken." } });
    expect(codesOf(await check({ mark: setting.mark }))).toEqual(["approval-withdrawn"]);
    expect(
      (await school.shop.ask("POST", `/v1/approvals/${id}/issue`, { key: school.keys.head })).status,
    ).toBe(409);
  });

  test("a re-issue needs the difference that was seen", async () => {
    const { id } = await issued(await openCourse());
    const mark = (markedMaxRpm: number) =>
      school.shop.ask("PATCH", `/v1/bits/${school.bitId}`, {
        body: { markedMaxRpm },
        headers: { "If-Match": "*" },
      });
    await mark(11_000);
    const { body: seen } = await school.shop.ask("GET", `/v1/approvals/${id}/difference`);
    await mark(10_000);
    const late = await school.shop.ask("POST", `/v1/approvals/${id}/reissue`, {
      body: { resultDigest: seen.resultDigest },
      key: school.keys.head,
    });
    expect(late.status).toBe(409);
    expect(late.body.code).toBe("result-changed");
    const { body: now } = await school.shop.ask("GET", `/v1/approvals/${id}/difference`);
    const again = await made(
      `/v1/approvals/${id}/reissue`,
      { resultDigest: now.resultDigest },
      school.keys.head,
    );
    expect(again.state).toBe("issued");
    expect((await school.shop.ask("GET", `/v1/approvals/${id}`)).body).toMatchObject({
      state: "replaced",
      replacedById: again.id,
    });
  });

  test("comes no later than that of the readings it rests on", async () => {
    const { validUntil } = await issued(await openCourse(), { validUntil: inDays(600) });
    // The router's readings were given now and count for a year: policy dialReadingMaxAgeDays.
    expect(validUntil).toBe(inDays(365));
  });

  test("comes no later than that of a good run-out reading it rests on, nor does the setting outlive it", async () => {
    const readAt = inDays(-300);
    await made("/v1/run-out-readings", {
      bitId: school.bitId,
      routerId: school.routerId,
      runOutMm: 0.02,
      instrument: "dial indicator",
      readAt,
    });
    // Such a reading counts for a year: policy runOutReadingMaxAgeDays.
    const { id, validUntil } = await issued(await openCourse(), { validUntil: inDays(200) });
    expect(validUntil).toBe(inDays(65));
    school.nowMs += 66 * DAY_MS;
    expect((await school.shop.ask("GET", `/v1/approvals/${id}`)).body.state).toBe("expired");
    expect((await school.shop.ask("GET", `/v1/approvals/${id}/difference`)).body.differing).not.toEqual([]);
  });

  test("an issue at the same moment as a change of its ground never leaves a stale setting in force", async () => {
    for (let round = 0; round < 8; round += 1) {
      const { body } = await draft(await openCourse());
      await Promise.all([
        school.shop.ask("POST", `/v1/approvals/${body.id}/issue`, { key: school.keys.teacher }),
        school.shop.ask("POST", "/v1/speed-trials", {
          body: {
            bitId: school.bitId,
            routerId: school.routerId,
            mark: 1 + round / 2 - (round % 2) / 2,
            outcome: "shook",
          },
        }),
      ]);
      const { body: now } = await school.shop.ask("GET", `/v1/approvals/${body.id}`);
      const { body: difference } = await school.shop.ask("GET", `/v1/approvals/${body.id}/difference`);
      expect(now.state !== "issued" || difference.isSame).toBe(true);
    }
  });

  test("its grounds are kept whole", async () => {
    const { id, inputDigest } = await issued(await openCourse(), { woodIds: ["sugar-maple"] });
    const { body } = await school.shop.ask("GET", `/v1/approvals/${id}/grounds`);
    expect(body.digest).toBe(inputDigest);
    expect(body.results.map(({ plan }: { plan: { wood: { id: string } } }) => plan.wood.id)).toEqual([
      "black-cherry",
      "sugar-maple",
    ]);
    expect(body.results[0].input.bit.massG).toBe(PANEL_BIT.massG);
  });
});
