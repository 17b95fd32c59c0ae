import { expect, test } from "vitest";
import { behindTheService, copyRow, numbersTo } from "../../services/shop/testing/behind-the-service.ts";
import { check, codesOf, issued, made, openCourse, openSchool, school } from "./school.ts";

openSchool();

const consent = (key: string, fields: object = {}) =>
  school.shop.ask("POST", "/v1/qualifications", {
    body: { personId: school.people.student, kind: "parental-consent", ...fields },
    key,
  });

test("a qualification of one course does not count in another, and one of the shop counts in all", async () => {
  const other = await openCourse();
  const { setting } = await issued(await openCourse({ requirements: { isParentalConsentNeeded: true } }));
  const asked = { mark: setting.mark };
  expect((await consent(school.keys.teacher, { courseId: other })).status).toBe(201);
  expect(codesOf(await check(asked))).toEqual(["parental-consent-missing"]);
  expect((await consent(school.keys.teacher)).status).toBe(201);
  expect((await check(asked)).isAllowed).toBe(true);
});

test("only an instructor of its course signs and withdraws it; one of the shop, whoever signed it, or a manager", async () => {
  const courseId = await openCourse();
  expect((await consent(school.keys.other, { courseId })).body.code).toBe("not-yours");
  const withdraw = (id: string, key: string) =>
    school.shop.ask("POST", `/v1/qualifications/${id}/withdraw`, { body: { reason: "Copied." }, key });
  for (const fields of [{ courseId }, {}]) {
    const { body } = await consent(school.keys.teacher, fields);
    expect((await withdraw(body.id, school.keys.other)).body.code).toBe("not-yours");
    expect((await withdraw(body.id, school.keys.teacher)).status).toBe(200);
  }
  const { id } = await made(
    "/v1/qualifications",
    { personId: school.people.student, kind: "demonstration" },
    school.keys.other,
  );
  expect((await withdraw(id, school.keys.head)).status).toBe(200);
});

test("years of daily instructions do not hide a safety test", async () => {
  const requirements = { safetyTest: { passPercent: 90 } };
  const { setting } = await issued(await openCourse({ requirements }));
  const sign = (fields: object) =>
    made("/v1/qualifications", { personId: school.people.stranger, ...fields }, school.keys.teacher);
  await sign({ kind: "safety-test", scorePercent: 95 });
  const { id } = await sign({ kind: "instruction" });
  await behindTheService(school.shop, async (database) => {
    const { student, stranger } = school.people;
    await database.run(`UPDATE qualifications SET person_id = '${student}' WHERE person_id = '${stranger}'`);
    await copyRow(database, "qualifications", id, { id: "id || '_' || n" }, { from: numbersTo(600) });
  });
  expect((await check({ mark: setting.mark })).isAllowed).toBe(true);
});
