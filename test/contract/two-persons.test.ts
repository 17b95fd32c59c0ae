import { describe, expect, test } from "vitest";
import { check, codesOf, draft, issued, made, openCourse, openSchool, school } from "./school.ts";

openSchool();

const issue = (id: string, key?: string) =>
  school.shop.ask("POST", `/v1/approvals/${id}/issue`, key === undefined ? {} : { key });
const change = (courseId: string, body: object, key: string) =>
  school.shop.ask("PATCH", `/v1/courses/${courseId}`, { body, key, headers: { "If-Match": "*" } });
const stateOf = async (id: string) => (await school.shop.ask("GET", `/v1/approvals/${id}`)).body.state;

async function reissue(id: string, key: string) {
  const { body } = await school.shop.ask("GET", `/v1/approvals/${id}/difference`);
  return school.shop.ask("POST", `/v1/approvals/${id}/reissue`, {
    body: { resultDigest: body.resultDigest },
    key,
  });
}

describe("in a course that asks for two persons, one alone cannot put a setting in force", () => {
  test("by switching the rule off: an instructor may not, and what is drafted keeps it when a manager does", async () => {
    const courseId = await openCourse({ isTwoPerson: true });
    const { body: drafted } = await draft(courseId);
    expect(drafted.isTwoPerson).toBe(true);
    expect(await change(courseId, { isTwoPerson: false }, school.keys.teacher)).toMatchObject({
      status: 403,
      body: { code: "not-yours" },
    });
    expect((await change(courseId, { isTwoPerson: false }, school.keys.head)).status).toBe(200);
    expect(await issue(drafted.id, school.keys.teacher)).toMatchObject({
      status: 409,
      body: { code: "second-person-needed" },
    });
    expect((await issue(drafted.id, school.keys.head)).body.state).toBe("issued");
  });

  test("by drafting before the rule is switched on", async () => {
    const courseId = await openCourse();
    const { body: drafted } = await draft(courseId);
    expect((await change(courseId, { isTwoPerson: true }, school.keys.teacher)).status).toBe(200);
    expect((await issue(drafted.id, school.keys.teacher)).body.code).toBe("second-person-needed");
  });

  test("with a program's key, which issues nothing and drafts nothing there", async () => {
    const courseId = await openCourse({ isTwoPerson: true });
    const { body: drafted } = await draft(courseId);
    expect(await issue(drafted.id)).toMatchObject({ status: 403, body: { code: "person-needed" } });
    expect(await draft(courseId, {}, school.shop.managerKey)).toMatchObject({
      status: 403,
      body: { code: "person-needed" },
    });
    expect(await stateOf(drafted.id)).toBe("draft");
  });

  test("nor by what a program drafted before", async () => {
    const courseId = await openCourse();
    const { body: drafted } = await draft(courseId, {}, school.shop.managerKey);
    await change(courseId, { isTwoPerson: true }, school.keys.head);
    expect((await issue(drafted.id, school.keys.head)).body.code).toBe("second-person-needed");
  });

  test("by a second key of their own", async () => {
    const courseId = await openCourse({ isTwoPerson: true });
    const { body: drafted } = await draft(courseId);
    const { key } = await made("/v1/keys", { name: "Another", personId: school.people.teacher });
    expect((await issue(drafted.id, key)).body.code).toBe("second-person-needed");
  });

  test("by issuing again: that drafts, and the old setting ends when another person issues it", async () => {
    const courseId = await openCourse({ isTwoPerson: true });
    const { body: first } = await draft(courseId);
    await issue(first.id, school.keys.head);
    const again = await reissue(first.id, school.keys.head);
    expect(again).toMatchObject({ status: 201, body: { state: "draft", replacesId: first.id } });
    expect(again.body).not.toHaveProperty("issuedBy");
    expect(await stateOf(first.id)).toBe("issued");
    expect((await issue(again.body.id, school.keys.head)).body.code).toBe("second-person-needed");
    expect((await issue(again.body.id, school.keys.teacher)).body.state).toBe("issued");
    expect(await stateOf(first.id)).toBe("replaced");
  });

  test("by issuing again after the rule was switched off", async () => {
    const courseId = await openCourse({ isTwoPerson: true });
    const { body: first } = await draft(courseId);
    await issue(first.id, school.keys.head);
    await change(courseId, { isTwoPerson: false }, school.keys.head);
    expect((await reissue(first.id, school.keys.teacher)).body.state).toBe("draft");
  });

  test("by two drafts in place of one, or in place of what was withdrawn", async () => {
    const courseId = await openCourse({ isTwoPerson: true });
    const { body: first } = await draft(courseId);
    await issue(first.id, school.keys.head);
    const one = (await reissue(first.id, school.keys.head)).body;
    const two = (await reissue(first.id, school.keys.head)).body;
    expect((await issue(one.id, school.keys.teacher)).status).toBe(200);
    expect((await issue(two.id, school.keys.teacher)).body.code).toBe("invalid-state");
    const three = (await reissue(one.id, school.keys.head)).body;
    await made(`/v1/approvals/${one.id}/withdraw`, { reason: "The guard is broken." }, school.keys.teacher);
    expect((await issue(three.id, school.keys.teacher)).body.code).toBe("invalid-state");
  });
});

test("issuing is a person's where one is enough, too", async () => {
  const { body: drafted } = await draft(await openCourse());
  expect((await issue(drafted.id)).body.code).toBe("person-needed");
  const { id } = await issued(await openCourse());
  expect((await reissue(id, school.shop.managerKey)).body.code).toBe("person-needed");
});

describe("what a course asks of its students", () => {
  const today = async (courseId: string) =>
    (await school.shop.ask("GET", `/v1/courses/${courseId}/students/${school.people.student}/today`)).body;

  test("holds for a setting as it was when that was drafted, if it is loosened later", async () => {
    const courseId = await openCourse({ requirements: { isParentalConsentNeeded: true } });
    const { setting } = await issued(courseId);
    await change(courseId, { requirements: {} }, school.keys.teacher);
    expect(codesOf(await check({ mark: setting.mark }))).toEqual(["parental-consent-missing"]);
    expect((await today(courseId)).settings).toEqual([]);
  });

  test("holds as it is now, if it is tightened later, and of each thing the stricter", async () => {
    const courseId = await openCourse({
      requirements: { safetyTest: { passPercent: 90 }, instructionMaxAgeDays: 365 },
    });
    const { setting } = await issued(courseId);
    const asked = { mark: setting.mark };
    const sign = (fields: object) =>
      made("/v1/qualifications", { personId: school.people.student, ...fields }, school.keys.teacher);
    await sign({ kind: "safety-test", scorePercent: 85 });
    await sign({
      kind: "instruction",
      givenAt: new Date(school.nowMs - 40 * 24 * 3600 * 1000).toISOString(),
    });
    const requirements = {
      safetyTest: { passPercent: 80 },
      instructionMaxAgeDays: 30,
      isDemonstrationNeeded: true,
    };
    await change(courseId, { requirements }, school.keys.teacher);
    expect(codesOf(await check(asked))).toEqual([
      "safety-test-missing",
      "demonstration-missing",
      "instruction-missing",
    ]);
    await sign({ kind: "safety-test", scorePercent: 90 });
    await sign({ kind: "instruction" });
    await sign({ kind: "demonstration" });
    expect((await check(asked)).isAllowed).toBe(true);
  });
});
