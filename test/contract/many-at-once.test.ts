import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, lastSequence, made } from "./crib.ts";
import { type Furnished, furnish } from "./furnish.ts";
import { openShop, type Shop } from "./shop.ts";

let shop: Shop;
let furnished: Furnished;
let course: string;
beforeAll(async () => {
  shop = await openShop({}, undefined, afterAll);
  furnished = await furnish((path, body, key) => made(shop, path, body, key));
  course = `/v1/courses/${furnished.ids["courseId"]}/enrolments/batch`;
});

const post = (path: string, data: object[], headers: Record<string, string> = {}) =>
  shop.ask("POST", path, { body: { data }, headers });
const newPeople = async (count: number): Promise<string[]> => {
  const data = Array.from({ length: count }, (_, index) => ({ name: `New ${index}`, role: "student" }));
  const { body } = await post("/v1/people/batch", data);
  return body.data.map(({ person }: { person: { id: string } }) => person.id);
};
const asStudents = (ids: readonly string[]) => ids.map((personId) => ({ personId, part: "student" }));

describe("a class is enrolled in one request", () => {
  test("all or nothing: one who is there already, or twice in the list, leaves everybody out", async () => {
    const [first = "", second = ""] = await newPeople(2);
    expect((await post(course, asStudents([first]))).status).toBe(201);
    const before = await lastSequence(shop);
    const again = await post(course, asStudents([second, first]));
    expect([again.status, again.body.code]).toEqual([409, "enrolled-already"]);
    expect(again.body.detail).toMatch(/^Number 2 of the list: /);
    const twice = await post(course, asStudents([second, second]));
    expect(twice.body).toMatchObject({ code: "enrolled-already" });
    const nobody = await post(course, [
      ...asStudents([second]),
      { personId: "person_none", part: "student" },
    ]);
    expect(nobody.body.errors).toMatchObject([{ pointer: "/data/1/personId" }]);
    expect(await lastSequence(shop)).toBe(before);
  });

  test("row by row: those that cannot be taken are named, the others are in, once for each key", async () => {
    const [first = "", second = "", third = ""] = await newPeople(3);
    await post(course, asStudents([first]));
    const data = [...asStudents([first, second, "person_none"]), { part: "student" }, ...asStudents([third])];
    const headers = { "Idempotency-Key": "class-of-five" };
    const answer = await post(`${course}?mode=row-by-row`, data, headers);
    expect(answer.status, answer.text).toBe(201);
    expect(answer.body.data.map(({ personId }: { personId: string }) => personId)).toEqual([second, third]);
    expect(answer.body.refused).toMatchObject([
      { row: 1, problem: { code: "enrolled-already" } },
      { row: 3, problem: { code: "not-valid", errors: [{ pointer: "/personId" }] } },
      { row: 4, problem: { code: "not-valid", errors: [{ pointer: "/personId" }] } },
    ]);
    const before = await lastSequence(shop);
    expect((await post(`${course}?mode=row-by-row`, data, headers)).body).toEqual(answer.body);
    expect(await lastSequence(shop)).toBe(before);
  });

  test("row by row with no row that can be taken is refused, with the fault of each", async () => {
    const { status, body } = await post(`${course}?mode=row-by-row`, [{ part: "student" }, { personId: 1 }]);
    expect(status).toBe(422);
    expect(body.errors.map(({ pointer }: { pointer: string }) => pointer).sort()).toEqual([
      "/data/0/personId",
      "/data/1/part",
      "/data/1/personId",
    ]);
  });
});

test("a class's safety test is signed in one request, by the person whose key it is", async () => {
  const ids = await newPeople(3);
  const { courseId } = furnished.ids;
  const data = ids.map((personId, index) => ({
    ...{ personId, courseId, kind: "safety-test", scorePercent: 90 + index },
  }));
  const ask = (rows: object[], key: string) =>
    shop.ask("POST", "/v1/qualifications/batch", { body: { data: rows }, key });
  const signed = await ask(data, furnished.keys.instructor);
  expect(signed.status, signed.text).toBe(201);
  expect(signed.body.data).toHaveLength(3);
  expect(new Set(signed.body.data.map(({ signedBy }: { signedBy: string }) => signedBy)).size).toBe(1);
  const unscored = await ask([{ ...data[0], scorePercent: undefined }], furnished.keys.instructor);
  expect(unscored.body.errors).toMatchObject([{ pointer: "/data/0/scorePercent" }]);
  expect((await ask(data, furnished.keys.member)).status).toBe(403);
});

test("places inside a row that was refused are refused with it", async () => {
  const data = [
    { name: "", kind: "rack" },
    { name: "Position 1", kind: "position", insideNumber: 1 },
  ];
  const more = [...data, { name: "Drawer 7", kind: "drawer" }];
  const { body } = await post("/v1/places/batch?mode=row-by-row", more);
  expect(body.data).toMatchObject([{ name: "Drawer 7" }]);
  expect(body.refused.map(({ row }: { row: number }) => row)).toEqual([1, 2]);
});

test("the labels of chosen bits are one page to print", async () => {
  const [one, other] = [
    await addBit(shop, { name: "Chosen one" }),
    await addBit(shop, { name: "Other one" }),
  ];
  const page = await shop.ask("GET", `/v1/bits/labels?ids=${one.id},${other.id},${one.id}`);
  expect(page.headers["content-type"]).toMatch(/^text\/html/);
  expect(page.text.match(/data-group="label"/g)).toHaveLength(2);
  expect(page.text).toContain("Chosen one");
  const { body } = await shop.ask("GET", "/v1/bits/labels?ids=bit_none");
  expect(body.errors).toMatchObject([{ in: "query", pointer: "/ids", message: "There is no bit bit_none." }]);
  expect((await shop.ask("GET", "/v1/bits/labels")).status).toBe(422);
});
