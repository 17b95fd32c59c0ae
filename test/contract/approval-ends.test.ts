import { describe, expect, test } from "vitest";
import { check, codesOf, DAY_MS, inDays, issued, made, openCourse, openSchool, school } from "./school.ts";
import { placeIn, statusBits } from "./status-bits.ts";

openSchool();

describe("a setting's end", () => {
  test("is that of its course: earlier when the course ends earlier, and at once when it is over", async () => {
    const courseId = await openCourse({ endsAt: inDays(60) });
    const { id, setting } = await issued(courseId, { validUntil: inDays(30) });
    const change = (endsAt: string) =>
      school.shop.ask("PATCH", `/v1/courses/${courseId}`, { body: { endsAt }, headers: { "If-Match": "*" } });
    const read = async () => (await school.shop.ask("GET", `/v1/approvals/${id}`)).body;
    await change(inDays(40));
    expect(await read()).toMatchObject({ state: "issued", validUntil: inDays(30) });
    await change(inDays(10));
    expect(await read()).toMatchObject({ state: "issued", validUntil: inDays(10) });
    const sheet = await school.shop.ask("GET", `/v1/approvals/${id}/sheet`);
    expect(sheet.body.validUntil).toBe(inDays(10));
    const stated = JSON.parse(Buffer.from(sheet.body.jws.split(".")[1], "base64url").toString());
    expect(stated.exp).toBe(Math.floor(Date.parse(inDays(10)) / 1000));
    await change(inDays(50));
    expect((await read()).validUntil, "a later end lengthens nothing that was approved for less").toBe(
      inDays(10),
    );
    const isMarked = async () => placeIn(await statusBits(school.shop), stated.status.status_list.idx);
    expect(await isMarked()).toBe(0);
    const dialMark = setting.mark;
    expect(codesOf(await check({ mark: dialMark }))).toEqual([]);
    school.nowMs += 11 * DAY_MS;
    expect((await read()).state).toBe("expired");
    expect(await isMarked(), "sheets signed before say a later end").toBe(1);
    expect((await school.shop.ask("GET", `/v1/approvals/${id}/sheet`)).status).toBe(409);
  });

  test("comes with that of a course which is over already, and says so", async () => {
    const courseId = await openCourse();
    const { id, setting } = await issued(courseId);
    school.nowMs += DAY_MS;
    await school.shop.ask("PATCH", `/v1/courses/${courseId}`, {
      body: { endsAt: inDays(0) },
      headers: { "If-Match": "*" },
    });
    const { body } = await school.shop.ask("GET", `/v1/approvals/${id}`);
    expect(body).toMatchObject({ state: "lapsed", lapse: { reason: "The course has ended." } });
    expect(codesOf(await check({ mark: setting.mark }))).toEqual(["approval-lapsed"]);
  });

  test("does not come with a remark: a scorched cut is shown, and one that changes the work says what happened", async () => {
    const { id } = await issued(await openCourse());
    const log = (outcome: string) =>
      made("/v1/uses", {
        ...{ bitId: school.bitId, routerId: school.routerId, woodId: "black-cherry" },
        ...{ metres: 2, minutes: 2, outcomes: [outcome] },
      });
    await log("scorched");
    await log("scorched");
    const read = async () => (await school.shop.ask("GET", `/v1/approvals/${id}`)).body;
    expect((await read()).state).toBe("issued");
    const { body: difference } = await school.shop.ask("GET", `/v1/approvals/${id}/difference`);
    expect(difference.isSame).toBe(true);
    expect(difference.after.findings).toContain("scorched-before");
    expect(difference.differing).not.toEqual([]);
    expect(difference.inWords).toEqual([
      expect.stringMatching(/^Now: This bit has scorched this wood 2 times|twice/),
    ]);
    await log("came-loose");
    expect(await read()).toMatchObject({
      state: "lapsed",
      lapse: { reason: expect.stringMatching(/^Somebody logged a cut in which the bit came loose\. /) },
    });
  });
});
