import { describe, expect, test } from "vitest";
import {
  check,
  codesOf,
  DAY_MS,
  inDays,
  issued,
  made,
  openCourse,
  openSchool,
  START,
  school,
} from "./school.ts";

openSchool();

describe("a check", () => {
  test("is a no for whatever is unknown", async () => {
    const { setting } = await issued(await openCourse());
    const { mark } = setting;
    expect((await check({ mark })).isAllowed).toBe(true);
    expect(codesOf(await check({ mark, personId: "nobody" }))).toEqual(["person-unknown", "no-approval"]);
    expect(codesOf(await check({ mark, bitId: "nothing" }))).toEqual(["bit-unknown", "no-approval"]);
    expect(codesOf(await check({ mark, routerId: "nothing" }))).toEqual(["router-unknown", "no-approval"]);
    expect(codesOf(await check({ mark, personId: school.people.stranger }))).toEqual([
      "no-course",
      "no-approval",
    ]);
  });

  test("gives every reason why not", async () => {
    await issued(await openCourse({ requirements: { isDemonstrationNeeded: true } }), {
      skill: "large-bits",
    });
    const answer = await check({ mark: 6, woodId: "hard-as-nails", mounting: "handheld" });
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
    const asked = { mark: setting.mark };
    expect(codesOf(await check(asked))).toEqual(["approval-not-yet"]);
    school.nowMs = START + 3 * DAY_MS;
    expect((await check(asked)).isAllowed).toBe(true);
    school.nowMs = START + 6 * DAY_MS;
    expect(codesOf(await check(asked))).toEqual(["approval-expired"]);
    expect((await school.shop.ask("GET", `/v1/approvals/${id}`)).body.state).toBe("expired");
    expect((await school.shop.ask("GET", `/v1/approvals/${id}/sheet`)).status).toBe(409);
  });

  test("is a no while the bit is held, away or with somebody else", async () => {
    const { setting } = await issued(await openCourse());
    const asked = { mark: setting.mark };
    const loan = await made("/v1/loans", { bitId: school.bitId, personId: school.people.stranger });
    expect(codesOf(await check(asked))).toEqual(["bit-on-loan"]);
    await made(`/v1/loans/${loan.id}/return`, {});
    await made("/v1/loans", { bitId: school.bitId, personId: school.people.student });
    expect((await check(asked)).isAllowed).toBe(true);
    await made(`/v1/bits/${school.bitId}/hold`, { reason: "A tooth looks odd." });
    expect(codesOf(await check(asked))).toEqual(["bit-held", "approval-lapsed"]);
  });

  test("a qualification that ran out or was withdrawn no longer counts", async () => {
    const { setting } = await issued(await openCourse({ requirements: { safetyTest: { passPercent: 90 } } }));
    const asked = { mark: setting.mark };
    const pass = (scorePercent: number, fields: object = {}) =>
      made(
        "/v1/qualifications",
        { personId: school.people.student, kind: "safety-test", scorePercent, ...fields },
        school.keys.teacher,
      );
    await pass(89);
    expect(codesOf(await check(asked))).toEqual(["safety-test-missing"]);
    const { id } = await pass(90, { expiresAt: inDays(10) });
    expect((await check(asked)).isAllowed).toBe(true);
    school.nowMs = START + 11 * DAY_MS;
    expect(codesOf(await check(asked))).toEqual(["safety-test-missing"]);
    school.nowMs = START;
    await made(`/v1/qualifications/${id}/withdraw`, { reason: "It was copied." });
    expect(codesOf(await check(asked))).toEqual(["safety-test-missing"]);
  });

  test("is kept if that is asked for, and only then", async () => {
    const { setting } = await issued(await openCourse());
    const kept = await check({ mark: setting.mark, isRecorded: true });
    await check({ mark: setting.mark });
    const { body } = await school.shop.ask("GET", `/v1/checks?bitId=${school.bitId}`);
    expect(body.data).toMatchObject([{ id: kept.checkId, isAllowed: true, personId: school.people.student }]);
    const foreign = await school.shop.ask("GET", `/v1/checks?bitId=${school.bitId}`, {
      key: school.keys.stranger,
    });
    expect(foreign.body.data).toEqual([]);
  });

  test("about somebody else is not a member's to ask", async () => {
    const answer = await school.shop.ask("POST", "/v1/checks", {
      body: { personId: school.people.student, bitId: school.bitId, routerId: school.routerId },
      key: school.keys.stranger,
    });
    expect(answer.status).toBe(403);
  });
});
