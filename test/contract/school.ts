import { afterAll, beforeAll, beforeEach, expect } from "vitest";
import { openShop, PANEL_BIT, type Shop, TABLE_ROUTER } from "./shop.ts";

export const DAY_MS = 24 * 60 * 60 * 1000;
export const START = Date.parse("2026-03-02T08:00:00.000Z");

type Everybody = { head: string; teacher: string; other: string; student: string; stranger: string };

type School = {
  shop: Shop;
  nowMs: number;
  people: Everybody;
  keys: Everybody;
  bitId: string;
  routerId: string;
  planId: string;
};

/** What the tests of a file play with; filled in by `openSchool`. */
export const school: School = Object({ nowMs: START });

/** A shop with a school in it for the tests of one file: people once, a new bit, router and plan for each test. */
export function openSchool(): void {
  beforeAll(async () => {
    school.shop = await openShop(
      {},
      () => new Date(school.nowMs),
      (release) => afterAll(release),
    );
    const person = async (role: string) =>
      (await made("/v1/people", { name: `A ${role}`, role })).id as string;
    school.people = {
      head: await person("manager"),
      teacher: await person("instructor"),
      other: await person("instructor"),
      student: await person("member"),
      stranger: await person("member"),
    };
    const keyOf = async (personId: string) =>
      (await made("/v1/keys", { name: "Own", personId })).key as string;
    school.keys = {
      head: await keyOf(school.people.head),
      teacher: await keyOf(school.people.teacher),
      other: await keyOf(school.people.other),
      student: await keyOf(school.people.student),
      stranger: await keyOf(school.people.stranger),
    };
  });

  beforeEach(async () => {
    school.nowMs = START;
    const { markedMaxRpm: _, ...unmarked } = PANEL_BIT;
    school.bitId = (await made("/v1/bits", unmarked)).id;
    school.routerId = (await made("/v1/routers", TABLE_ROUTER)).id;
    school.planId = (
      await made("/v1/plans", {
        bit: { id: school.bitId },
        router: { id: school.routerId },
        mounting: "table",
        woodId: "black-cherry",
        cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
      })
    ).id;
  });
}

export const made = async (url: string, body: object, key?: string) => {
  const answer = await school.shop.ask("POST", url, { body, ...(key !== undefined && { key }) });
  expect(answer.status, `${url} ${answer.text}`).toBeLessThan(300);
  return answer.body;
};
export const inDays = (days: number) => new Date(school.nowMs + days * DAY_MS).toISOString();

export async function openCourse(fields: object = {}): Promise<string> {
  const course = await made("/v1/courses", {
    name: "First year",
    policy: {},
    requirements: {},
    isTwoPerson: false,
    ...fields,
  });
  await made(`/v1/courses/${course.id}/enrolments`, { personId: school.people.teacher, part: "instructor" });
  await made(`/v1/courses/${course.id}/enrolments`, { personId: school.people.student, part: "student" });
  return course.id;
}

export const draft = (courseId: string, fields: object = {}, key = school.keys.teacher) =>
  school.shop.ask("POST", "/v1/approvals", {
    body: {
      name: "Panels",
      courseId,
      planId: school.planId,
      supervision: "beside",
      validUntil: inDays(30),
      ...fields,
    },
    key,
  });

export async function issued(courseId: string, fields: object = {}) {
  const { body } = await draft(courseId, fields);
  const answer = await school.shop.ask("POST", `/v1/approvals/${body.id}/issue`, {
    key: school.keys.teacher,
  });
  expect(answer.status, answer.text).toBe(200);
  return answer.body;
}

export const check = async (asked: object, key?: string) =>
  (
    await school.shop.ask("POST", "/v1/checks", {
      body: { personId: school.people.student, bitId: school.bitId, routerId: school.routerId, ...asked },
      ...(key !== undefined && { key }),
    })
  ).body;
export const codesOf = ({ reasons }: { reasons: { code: string }[] }) => reasons.map(({ code }) => code);
