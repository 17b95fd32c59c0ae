import { describe, expect, test } from "vitest";
import { DAY_MS, inDays, issued, made, openCourse, openSchool, START, school } from "./school.ts";

openSchool();

const ask = (url: string, key?: string) => school.shop.ask("GET", url, key === undefined ? {} : { key });

describe("what a class sees of itself", () => {
  test("what runs out in the coming days, the first to end first", async () => {
    const courseId = await openCourse();
    const late = await issued(courseId, { validUntil: inDays(6) });
    const soon = await issued(courseId, { validUntil: inDays(3) });
    await issued(courseId, { validUntil: inDays(40) });
    const consent = { personId: school.people.student, kind: "parental-consent", expiresAt: inDays(5) };
    const { id } = await made("/v1/qualifications", consent, school.keys.teacher);
    const { body } = await ask(`/v1/courses/${courseId}/ending`, school.keys.teacher);
    expect(body.settings.map((each: { id: string }) => each.id)).toEqual([soon.id, late.id]);
    expect(body.qualifications.map((each: { id: string }) => each.id)).toEqual([id]);
    const { body: tomorrow } = await ask(`/v1/courses/${courseId}/ending?days=1`, school.keys.teacher);
    expect(tomorrow).toEqual({ settings: [], qualifications: [] });
    expect((await ask(`/v1/courses/${courseId}/ending`, school.keys.other)).status).toBe(403);
  });

  test("what the class used, bit by bit, and only lately", async () => {
    const courseId = await openCourse();
    await made("/v1/loans", { bitId: school.bitId }, school.keys.student);
    const use = (outcomes: string[], doneAt: string) =>
      made(
        "/v1/uses",
        {
          bitId: school.bitId,
          routerId: school.routerId,
          woodId: "black-cherry",
          metres: 2,
          minutes: 3,
          outcomes,
          doneAt,
        },
        school.keys.student,
      );
    await use(["fine"], inDays(0));
    school.nowMs = START + 28 * DAY_MS;
    await use(["scorched", "chattered"], inDays(-2));
    await use(["fine"], inDays(-1));
    const { body } = await ask(`/v1/courses/${courseId}/usage`, school.keys.teacher);
    const own = body.data.find((each: { bitId: string }) => each.bitId === school.bitId);
    expect(own).toMatchObject({
      uses: 2,
      metres: 4,
      minutes: 6,
      outcomes: { fine: 1, scorched: 1, chattered: 1, "tore-out": 0 },
    });
  });

  test("what a student may do today, for an instructor to look up; nobody else's student", async () => {
    const courseId = await openCourse();
    const { id } = await issued(courseId);
    const day = await ask(
      `/v1/courses/${courseId}/students/${school.people.student}/today`,
      school.keys.teacher,
    );
    expect(day.body.settings.map((each: { id: string }) => each.id)).toEqual([id]);
    const stranger = await ask(
      `/v1/courses/${courseId}/students/${school.people.stranger}/today`,
      school.keys.teacher,
    );
    expect(stranger.status).toBe(404);
    school.nowMs = START + 40 * DAY_MS;
    const later = await ask(
      `/v1/courses/${courseId}/students/${school.people.student}/today`,
      school.keys.teacher,
    );
    expect(later.body.settings).toEqual([]);
  });
});

describe("who is in a course", () => {
  test("nobody twice at once, and again after they left", async () => {
    const courseId = await openCourse();
    const twice = await school.shop.ask("POST", `/v1/courses/${courseId}/enrolments`, {
      body: { personId: school.people.student, part: "student" },
    });
    expect(twice.body.code).toBe("enrolled-already");
    const { body } = await ask(`/v1/enrolments?courseId=${courseId}&personId=${school.people.student}`);
    const ended = await school.shop.ask("POST", `/v1/enrolments/${body.data[0].id}/end`, {
      key: school.keys.teacher,
    });
    expect(ended.body.endedAt).toBeDefined();
    await made(
      `/v1/courses/${courseId}/enrolments`,
      { personId: school.people.student, part: "student" },
      school.keys.teacher,
    );
  });

  test("of twenty requests at once for the same student one is taken", async () => {
    const courseId = await openCourse();
    const answers = await Promise.all(
      Array.from({ length: 20 }, () =>
        school.shop.ask("POST", `/v1/courses/${courseId}/enrolments`, {
          body: { personId: school.people.stranger, part: "student" },
        }),
      ),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([201, ...Array<number>(19).fill(409)]);
  });

  test("who teaches is a manager's to say, and a member sees their own courses only", async () => {
    const courseId = await openCourse();
    const self = await school.shop.ask("POST", `/v1/courses/${courseId}/enrolments`, {
      body: { personId: school.people.other, part: "instructor" },
      key: school.keys.other,
    });
    expect(self.status).toBe(403);
    expect((await ask(`/v1/courses/${courseId}`, school.keys.student)).status).toBe(200);
    expect((await ask(`/v1/courses/${courseId}`, school.keys.stranger)).status).toBe(404);
    const own = await ask("/v1/courses", school.keys.stranger);
    expect(own.body.data.map((each: { id: string }) => each.id)).not.toContain(courseId);
  });
});

describe("a qualification", () => {
  test("is signed by a person, not for themselves, and a test has a score", async () => {
    const sign = (body: object, key?: string) =>
      school.shop.ask("POST", "/v1/qualifications", { body, ...(key !== undefined && { key }) });
    const demonstration = { personId: school.people.student, kind: "demonstration" };
    expect((await sign(demonstration)).body.code).toBe("person-needed");
    const own = await sign({ ...demonstration, personId: school.people.teacher }, school.keys.teacher);
    expect(own.body.code).toBe("not-yours");
    for (const body of [
      { ...demonstration, kind: "safety-test" },
      { ...demonstration, scorePercent: 90 },
    ]) {
      const refused = await sign(body, school.keys.teacher);
      expect(refused.status).toBe(422);
      expect(refused.body.errors).toMatchObject([{ pointer: "/scorePercent" }]);
    }
    const { body } = await sign(demonstration, school.keys.teacher);
    expect(body.signedBy).toBe(school.people.teacher);
    expect((await ask(`/v1/qualifications/${body.id}`, school.keys.student)).status).toBe(200);
    expect((await ask(`/v1/qualifications/${body.id}`, school.keys.stranger)).status).toBe(404);
  });
});

describe("the shop's policy", () => {
  test("tightens every plan, names its version, and can be put back", async () => {
    const preview = async () => (await school.shop.ask("GET", `/v1/plans/${school.planId}`)).body.request;
    const speed = async () =>
      (await school.shop.ask("POST", "/v1/plans/preview", { body: await preview() })).body.speed.ceilingRpm;
    const usual = await speed();
    const set = async (layer: object, etag?: string) => {
      const current = etag ?? (await ask("/v1/shop-policy")).headers["etag"] ?? "";
      return school.shop.ask("PUT", "/v1/shop-policy", { body: { layer }, headers: { "If-Match": current } });
    };
    expect((await set({ rimSpeedMaxMPerS: 30 }, '"99"')).status).toBe(412);
    expect((await set({ rimSpeedMaxMPerS: 30 })).status).toBe(200);
    // 60 × 30 / (π × 0.0889), from the definition of the rim's speed.
    expect(await speed()).toBe(6444);
    expect((await set({ rimSpeedMaxMPerS: 200 })).status).toBe(422);
    await set({});
    expect(await speed()).toBe(usual);
    const member = await school.shop.ask("PUT", "/v1/shop-policy", {
      body: { layer: {} },
      headers: { "If-Match": "*" },
      key: school.keys.teacher,
    });
    expect(member.status).toBe(403);
  });
});
