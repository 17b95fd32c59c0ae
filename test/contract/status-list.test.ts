import { describe, expect, test } from "vitest";
import { behindTheService, copyRow, numbersTo } from "../../services/shop/testing/behind-the-service.ts";
import { issued, made, openCourse, openSchool, school } from "./school.ts";
import { placeIn, statusBits } from "./status-bits.ts";

openSchool();

const sheetOf = async (id: string) => {
  const { jws } = (await school.shop.ask("GET", `/v1/approvals/${id}/sheet`)).body;
  return JSON.parse(Buffer.from(jws.split(".")[1], "base64url").toString());
};

describe("the status list", () => {
  test("marks a setting in the moment it is withdrawn, at the place that its sheet names, and no other", async () => {
    const courseId = await openCourse();
    const settings = [await issued(courseId), await issued(courseId), await issued(courseId)];
    const places: number[] = [];
    for (const { id } of settings) {
      const { status } = await sheetOf(id);
      expect(status.status_list.uri).toMatch(/\/v1\/approvals\/status$/);
      places.push(status.status_list.idx);
    }
    expect(new Set(places).size).toBe(3);
    expect(places.map((place) => Number.isInteger(place))).toEqual([true, true, true]);
    const marks = async () => {
      const bits = await statusBits(school.shop);
      return places.map((place) => placeIn(bits, place));
    };
    expect(await marks()).toEqual([0, 0, 0]);
    await made(`/v1/approvals/${settings[1]?.id}/withdraw`, { reason: "A new jig." });
    expect(await marks()).toEqual([0, 1, 0]);
  });

  test("of more settings than were once listed leaves none out", async () => {
    const { id } = await issued(await openCourse());
    const copies = 120_000;
    await behindTheService(school.shop, (database) =>
      copyRow(
        database,
        "approvals",
        id,
        { id: "'approval_copy_' || n", state: "'withdrawn'" },
        // Each gets a place of its own in the status list.
        { from: numbersTo(copies), without: ["status_index"] },
      ),
    );
    const { idx } = (await sheetOf(id)).status.status_list;
    const bits = await statusBits(school.shop);
    const marked = Array.from({ length: copies }, (_, index) => placeIn(bits, idx + 1 + index));
    expect(marked.every((bit) => bit === 1)).toBe(true);
    expect(placeIn(bits, idx)).toBe(0);
  }, 60_000);
});
