import { expect, test } from "vitest";
import { behindTheService, copyRow } from "../../services/shop/testing/behind-the-service.ts";
import { describeOnSqlite } from "../../services/shop/testing/one-engine.ts";
import { check, inDays, issued, openCourse, openSchool, school } from "./school.ts";

openSchool();

const DAYS = 800;

/** Copies a setting, each copy with times of its own; ids sort by time, so the copies are before or after every real one. */
function keptCopies(
  approvalId: string,
  count: number,
  isFirst: boolean,
  times: (number: number) => readonly [from: string, until: string],
): Promise<void> {
  return behindTheService(school.shop, async (database) => {
    await database.run("BEGIN");
    for (let number = 1; number <= count; number += 1) {
      const id = `approval_${isFirst ? "0" : "f"}${approvalId.slice(-20)}${number}`;
      const [from, until] = times(number);
      const other = { id: `'${id}'`, valid_from: `'${from}'`, valid_until: `'${until}'` };
      // Each gets a place of its own in the status list.
      await copyRow(database, "approvals", approvalId, other, { without: ["status_index"] });
    }
    await database.run("COMMIT");
  });
}

test.each([
  ["before", true],
  ["after", false],
] as const)("years of daily settings, with ids %s its own, do not hide today's", async (_, isFirst) => {
  const courseId = await openCourse();
  const today = await issued(courseId);
  await keptCopies(today.id, DAYS, isFirst, (day) => [inDays(-day), inDays(1 - day)]);
  const answer = await check({ mark: today.setting.mark });
  expect(answer).toMatchObject({ isAllowed: true, approvalId: today.id });
  const url = `/v1/courses/${courseId}/students/${school.people.student}/today`;
  const { body: day } = await school.shop.ask("GET", url, { key: school.keys.student });
  expect(day.settings.map(({ id }: { id: string }) => id)).toEqual([today.id]);
  const ending = await school.shop.ask("GET", `/v1/courses/${courseId}/ending?days=60`, {
    key: school.keys.teacher,
  });
  expect(ending.body.settings.map(({ id }: { id: string }) => id)).toEqual([today.id]);
});

test("hundreds of settings that hold for others do not hide one's own", async () => {
  const courseId = await openCourse();
  const own = await issued(courseId, { personIds: [school.people.student] });
  const others = await issued(courseId, { personIds: [school.people.stranger] });
  for (const isFirst of [true, false])
    await keptCopies(others.id, 300, isFirst, () => [inDays(-1), inDays(1)]);
  expect(await check({ mark: own.setting.mark })).toMatchObject({
    isAllowed: true,
    approvalId: own.id,
  });
});

describeOnSqlite("PostgreSQL chooses by how much is in the table", () => {
  test("only what is in force at the moment is read, by its index", async () => {
    const plan = await behindTheService(school.shop, ({ rows }) =>
      rows(`EXPLAIN QUERY PLAN SELECT id FROM approvals INDEXED BY approvals_in_force
       WHERE state = 'issued' AND course_id IN (SELECT value FROM json_each('["a"]'))
         AND bit_id = 'b' AND router_id = 'r' AND valid_until > '2026' AND valid_from <= '2026'`),
    );
    const steps = plan.map(({ detail }) => detail).join();
    expect(steps).toContain("bit_id=? AND router_id=? AND valid_until>?");
  });
});
