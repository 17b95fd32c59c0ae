import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { openShop, PANEL_BIT, type Shop, TABLE_ROUTER } from "./shop.ts";

const DAY_MS = 24 * 60 * 60 * 1000;
const START = Date.parse("2026-03-02T08:00:00.000Z");

let shop: Shop;
let nowMs = START;
let people: { teacher: string; other: string; student: string; stranger: string };
let keys: typeof people;
let bitId: string;
let routerId: string;
let planId: string;

const made = async (url: string, body: object, key?: string) => {
  const answer = await shop.ask("POST", url, { body, ...(key !== undefined && { key }) });
  expect(answer.status, `${url} ${answer.text}`).toBeLessThan(300);
  return answer.body;
};
const inDays = (days: number) => new Date(nowMs + days * DAY_MS).toISOString();

beforeAll(async () => {
  shop = await openShop(
    {},
    () => new Date(nowMs),
    (release) => afterAll(release),
  );
  const person = async (role: string) => (await made("/v1/people", { name: `A ${role}`, role })).id as string;
  people = {
    teacher: await person("instructor"),
    other: await person("instructor"),
    student: await person("member"),
    stranger: await person("member"),
  };
  const keyOf = async (personId: string) => (await made("/v1/keys", { name: "Own", personId })).key as string;
  keys = {
    teacher: await keyOf(people.teacher),
    other: await keyOf(people.other),
    student: await keyOf(people.student),
    stranger: await keyOf(people.stranger),
  };
});

beforeEach(async () => {
  nowMs = START;
  const { markedMaxRpm: _, ...unmarked } = PANEL_BIT;
  bitId = (await made("/v1/bits", unmarked)).id;
  routerId = (await made("/v1/routers", TABLE_ROUTER)).id;
  planId = (
    await made("/v1/plans", {
      bit: { id: bitId },
      router: { id: routerId },
      mounting: "table",
      woodId: "black-cherry",
      cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
    })
  ).id;
});

async function openCourse(fields: object = {}): Promise<string> {
  const course = await made("/v1/courses", {
    name: "First year",
    policy: {},
    requirements: {},
    isTwoPerson: false,
    ...fields,
  });
  await made(`/v1/courses/${course.id}/enrolments`, { personId: people.teacher, part: "instructor" });
  await made(`/v1/courses/${course.id}/enrolments`, { personId: people.student, part: "student" });
  return course.id;
}

const draft = (courseId: string, fields: object = {}, key = keys.teacher) =>
  shop.ask("POST", "/v1/approvals", {
    body: { name: "Panels", courseId, planId, supervision: "beside", validUntil: inDays(30), ...fields },
    key,
  });

async function issued(courseId: string, fields: object = {}) {
  const { body } = await draft(courseId, fields);
  const answer = await shop.ask("POST", `/v1/approvals/${body.id}/issue`, { key: keys.teacher });
  expect(answer.status, answer.text).toBe(200);
  return answer.body;
}

const check = async (asked: object, key?: string) =>
  (
    await shop.ask("POST", "/v1/checks", {
      body: { personId: people.student, bitId, routerId, ...asked },
      ...(key !== undefined && { key }),
    })
  ).body;
const codesOf = ({ reasons }: { reasons: { code: string }[] }) => reasons.map(({ code }) => code);

describe("who may issue", () => {
  test("only an instructor of that course, or a manager", async () => {
    const courseId = await openCourse();
    const refused = await draft(courseId, {}, keys.other);
    expect(refused.status).toBe(403);
    expect(refused.body.code).toBe("not-yours");
    expect((await draft(courseId, {}, keys.student)).status).toBe(403);
    expect((await draft(courseId)).status).toBe(201);
  });

  test("another one than who drafted, where the course asks for two", async () => {
    const courseId = await openCourse({ isTwoPerson: true });
    const { body } = await draft(courseId);
    const own = await shop.ask("POST", `/v1/approvals/${body.id}/issue`, { key: keys.teacher });
    expect(own.status).toBe(409);
    expect(own.body.code).toBe("second-person-needed");
    const second = await shop.ask("POST", `/v1/approvals/${body.id}/issue`);
    expect(second.body.state).toBe("issued");
  });

  test("nobody, where the plan must not be run under the course's policy", async () => {
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
    const seen = await shop.ask("GET", `/v1/approvals?courseId=${courseId}`, { key: keys.student });
    expect(seen.body.data.map((each: { id: string }) => each.id)).toEqual([id]);
    for (const url of [`/v1/approvals/${id}`, `/v1/approvals/${id}/sheet`, `/v1/approvals/${id}/grounds`]) {
      expect((await shop.ask("GET", url, { key: keys.student })).status, url).toBe(200);
      expect((await shop.ask("GET", url, { key: keys.stranger })).status, url).toBe(404);
    }
    expect((await shop.ask("GET", `/v1/approvals/${drafted.id}`, { key: keys.student })).status).toBe(404);
    const none = await shop.ask("GET", "/v1/approvals", { key: keys.stranger });
    expect(none.body.data).toEqual([]);
  });

  test("a setting for others is not theirs", async () => {
    const { id } = await issued(await openCourse(), { personIds: [people.stranger] });
    expect((await shop.ask("GET", `/v1/approvals/${id}`, { key: keys.student })).status).toBe(404);
    expect(codesOf(await check({ dialMark: 2 }))).toContain("not-for-this-person");
  });

  test("their own day and qualifications, nobody else's", async () => {
    const courseId = await openCourse({ requirements: { parentalConsent: true } });
    await issued(courseId);
    const day = await shop.ask("GET", `/v1/courses/${courseId}/students/${people.student}/today`, {
      key: keys.student,
    });
    expect(day.body.missing).toMatchObject([{ code: "parental-consent-missing" }]);
    expect(day.body.settings).toEqual([]);
    const foreign = await shop.ask("GET", `/v1/courses/${courseId}/students/${people.student}/today`, {
      key: keys.stranger,
    });
    expect(foreign.status).toBe(403);
    expect((await shop.ask("GET", `/v1/courses/${courseId}/needs`, { key: keys.student })).status).toBe(403);
    const needs = await shop.ask("GET", `/v1/courses/${courseId}/needs`, { key: keys.teacher });
    expect(needs.body.data).toMatchObject([
      { personId: people.student, missing: [{ code: "parental-consent-missing" }] },
    ]);
  });
});

describe("a check", () => {
  test("is a no for whatever is unknown", async () => {
    const { setting } = await issued(await openCourse());
    const { dialMark } = setting;
    expect((await check({ dialMark })).isAllowed).toBe(true);
    expect(codesOf(await check({ dialMark, personId: "nobody" }))).toEqual(["person-unknown", "no-setting"]);
    expect(codesOf(await check({ dialMark, bitId: "nothing" }))).toEqual(["bit-unknown", "no-setting"]);
    expect(codesOf(await check({ dialMark, routerId: "nothing" }))).toEqual(["router-unknown", "no-setting"]);
    expect(codesOf(await check({ dialMark, personId: people.stranger }))).toEqual([
      "no-course",
      "no-setting",
    ]);
  });

  test("tells every reason why not", async () => {
    await issued(await openCourse({ requirements: { demonstration: true } }), { skill: "large-bits" });
    const answer = await check({ dialMark: 6, woodId: "hard-as-nails", mounting: "handheld" });
    expect(answer).toMatchObject({ isAllowed: false, supervision: null, validUntil: null });
    expect(codesOf(answer)).toEqual([
      "other-mark",
      "other-wood",
      "other-mounting",
      "demonstration-missing",
      "skill-missing",
    ]);
  });

  test("ends with the setting's time, and begins with it", async () => {
    const { setting, id } = await issued(await openCourse(), { validFrom: inDays(2), validUntil: inDays(5) });
    const asked = { dialMark: setting.dialMark };
    expect(codesOf(await check(asked))).toEqual(["setting-not-yet"]);
    nowMs = START + 3 * DAY_MS;
    expect((await check(asked)).isAllowed).toBe(true);
    nowMs = START + 6 * DAY_MS;
    expect(codesOf(await check(asked))).toEqual(["setting-expired"]);
    expect((await shop.ask("GET", `/v1/approvals/${id}`)).body.state).toBe("expired");
    expect((await shop.ask("GET", `/v1/approvals/${id}/sheet`)).status).toBe(409);
  });

  test("is a no while the bit is held, away or with somebody else", async () => {
    const { setting } = await issued(await openCourse());
    const asked = { dialMark: setting.dialMark };
    const loan = await made("/v1/loans", { bitId, personId: people.stranger });
    expect(codesOf(await check(asked))).toEqual(["bit-on-loan"]);
    await made(`/v1/loans/${loan.id}/return`, {});
    await made("/v1/loans", { bitId, personId: people.student });
    expect((await check(asked)).isAllowed).toBe(true);
    await made(`/v1/bits/${bitId}/hold`, { because: "A tooth looks odd." });
    expect(codesOf(await check(asked))).toEqual(["bit-held", "setting-lapsed"]);
  });

  test("a qualification that ran out or was withdrawn no longer counts", async () => {
    const { setting } = await issued(await openCourse({ requirements: { safetyTest: { passPercent: 90 } } }));
    const asked = { dialMark: setting.dialMark };
    const pass = (scorePercent: number, fields: object = {}) =>
      made(
        "/v1/qualifications",
        { personId: people.student, kind: "safety-test", scorePercent, ...fields },
        keys.teacher,
      );
    await pass(89);
    expect(codesOf(await check(asked))).toEqual(["safety-test-missing"]);
    const { id } = await pass(90, { expiresAt: inDays(10) });
    expect((await check(asked)).isAllowed).toBe(true);
    nowMs = START + 11 * DAY_MS;
    expect(codesOf(await check(asked))).toEqual(["safety-test-missing"]);
    nowMs = START;
    await made(`/v1/qualifications/${id}/withdraw`, { because: "It was copied." });
    expect(codesOf(await check(asked))).toEqual(["safety-test-missing"]);
  });

  test("is kept where that is asked for, and only then", async () => {
    const { setting } = await issued(await openCourse());
    const kept = await check({ dialMark: setting.dialMark, isRecorded: true });
    await check({ dialMark: setting.dialMark });
    const { body } = await shop.ask("GET", `/v1/checks?bitId=${bitId}`);
    expect(body.data).toMatchObject([{ id: kept.checkId, isAllowed: true, personId: people.student }]);
    const foreign = await shop.ask("GET", `/v1/checks?bitId=${bitId}`, { key: keys.stranger });
    expect(foreign.body.data).toEqual([]);
  });

  test("about somebody else is not a member's to ask", async () => {
    const answer = await shop.ask("POST", "/v1/checks", {
      body: { personId: people.student, bitId, routerId },
      key: keys.stranger,
    });
    expect(answer.status).toBe(403);
  });
});

describe("a setting's end", () => {
  test("by hand is for good", async () => {
    const { id, setting } = await issued(await openCourse());
    const ended = await made(
      `/v1/approvals/${id}/withdraw`,
      { because: "The guard is broken." },
      keys.teacher,
    );
    expect(ended).toMatchObject({ state: "withdrawn", withdrawal: { because: "The guard is broken." } });
    expect(codesOf(await check({ dialMark: setting.dialMark }))).toEqual(["setting-withdrawn"]);
    expect((await shop.ask("POST", `/v1/approvals/${id}/issue`)).status).toBe(409);
  });

  test("a re-issue needs the difference that was seen", async () => {
    const { id } = await issued(await openCourse());
    await made(`/v1/bits/${bitId}/sharpenings`, { diameterMm: 88.2 });
    const { body: seen } = await shop.ask("GET", `/v1/approvals/${id}/difference`);
    await made(`/v1/bits/${bitId}/sharpenings`, { diameterMm: 87.6 });
    const late = await shop.ask("POST", `/v1/approvals/${id}/reissue`, {
      body: { resultDigest: seen.resultDigest },
    });
    expect(late.status).toBe(409);
    expect(late.body.code).toBe("ground-moved");
    const { body: now } = await shop.ask("GET", `/v1/approvals/${id}/difference`);
    const again = await made(`/v1/approvals/${id}/reissue`, { resultDigest: now.resultDigest });
    expect(again.state).toBe("issued");
    expect((await shop.ask("GET", `/v1/approvals/${id}`)).body).toMatchObject({
      state: "replaced",
      replacedById: again.id,
    });
  });

  test("comes no later than that of the readings it rests on", async () => {
    const { validUntil } = await issued(await openCourse(), { validUntil: inDays(600) });
    // The router's readings were given now and count for a year: policy dialReadingMaxAgeDays.
    expect(validUntil).toBe(inDays(365));
  });

  test("an issue at the same moment as a change of its ground never leaves a stale setting in force", async () => {
    for (let round = 0; round < 8; round += 1) {
      const { body } = await draft(await openCourse());
      await Promise.all([
        shop.ask("POST", `/v1/approvals/${body.id}/issue`, { key: keys.teacher }),
        shop.ask("POST", "/v1/speed-trials", {
          body: { bitId, routerId, mark: 1 + round / 2 - (round % 2) / 2, outcome: "shook" },
        }),
      ]);
      const { body: now } = await shop.ask("GET", `/v1/approvals/${body.id}`);
      const { body: difference } = await shop.ask("GET", `/v1/approvals/${body.id}/difference`);
      expect(now.state !== "issued" || difference.isSame).toBe(true);
    }
  });

  test("its grounds are kept whole", async () => {
    const { id, inputDigest } = await issued(await openCourse(), { woodIds: ["sugar-maple"] });
    const { body } = await shop.ask("GET", `/v1/approvals/${id}/grounds`);
    expect(body.digest).toBe(inputDigest);
    expect(body.results.map(({ plan }: { plan: { wood: { id: string } } }) => plan.wood.id)).toEqual([
      "black-cherry",
      "sugar-maple",
    ]);
    expect(body.results[0].input.bit.massG).toBe(PANEL_BIT.massG);
  });
});
