import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addRouter, addSomebody, lastSequence, made, planFor } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
});

type Kept = { id: string };

const read = async (path: string, { id }: Kept) => (await shop.ask("GET", `/v1/${path}/${id}`)).body;
const work = (bit: Kept, router: Kept, given: object = {}) => ({
  ...{ bitId: bit.id, routerId: router.id, woodId: "black-cherry" },
  ...{ metres: 4, minutes: 3, outcomes: ["fine"] },
  ...given,
});
const log = (body: object, key?: string) => shop.ask("POST", "/v1/uses", { body, ...(key && { key }) });
/** A router whose record names one size of collet. */
const halfInchRouter = () => addRouter(shop, { colletDiametersMm: [12.7] });
const collet = (router: Kept, name: string, diameterMm: number, condition = "good") =>
  made(shop, "/v1/collets", { name, routerId: router.id, diameterMm, condition });
const preview = (bit: Kept, router: Kept, given: object = {}) =>
  shop.ask("POST", "/v1/plans/preview", { body: planFor(bit, router, given) });
const codesOf = (body: { findings: { code: string }[] }) => body.findings.map(({ code }) => code);

describe("work that was done", () => {
  test("adds to what the bit has cut", async () => {
    const [bit, router] = [await addBit(shop), await addRouter(shop)];
    await log(work(bit, router, { metres: 4.5, minutes: 3 }));
    const { status, body } = await log(work(bit, router, { metres: 5.5, minutes: 2, notes: "Four doors." }));
    expect(status).toBe(201);
    expect(body).toMatchObject({ bitId: bit.id, routerId: router.id, woodId: "black-cherry", metres: 5.5 });
    expect((await read("bits", bit)).used).toMatchObject({
      ...{ uses: 2, metres: 10, minutes: 5, metresSinceInspection: 10 },
    });
  });

  test("by many at the same moment is all counted", async () => {
    const [bit, router] = [await addBit(shop), await addRouter(shop)];
    const answers = await Promise.all(Array.from({ length: 4 }, () => log(work(bit, router, { metres: 1 }))));
    expect(answers.map(({ status }) => status)).toEqual([201, 201, 201, 201]);
    expect((await read("bits", bit)).used).toMatchObject({ uses: 4, metres: 4 });
  });

  test("by a stored plan names its bit, router and wood", async () => {
    const [bit, router] = [await addBit(shop), await addRouter(shop)];
    const plan = await made(shop, "/v1/plans", planFor(bit, router, { woodId: "black-walnut" }));
    const given = { planId: plan.id, metres: 2, minutes: 2, outcomes: ["scorched"] };
    expect((await log(given)).body).toMatchObject({
      ...{ planId: plan.id, bitId: bit.id, routerId: router.id, woodId: "black-walnut" },
    });
    const twice = await log({ ...given, bitId: bit.id, woodId: "mdf" });
    expect(twice.status).toBe(422);
    expect(twice.body.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
      "/bitId",
      "/woodId",
    ]);
  });

  test("by a plan for a bit that is not kept here is refused", async () => {
    const router = await addRouter(shop);
    const bit = {
      form: { kind: "straight", diameterMm: 12, cuttingLengthMm: 25 },
      shankDiameterMm: 12,
      wings: 2,
    };
    const cut = { kind: "groove", depthMm: 6, edges: [{ lengthMm: 300, grain: "long" }] };
    const plan = await made(shop, "/v1/plans", { ...planFor({ id: "" }, router), bit, cut });
    const answer = await log({ planId: plan.id, metres: 1, minutes: 1, outcomes: ["fine"] });
    expect(answer.body.errors).toMatchObject([{ pointer: "/planId" }]);
  });

  test.each([
    ["nothing named", { bitId: undefined, woodId: undefined }, ["/bitId", "/woodId"]],
    [
      "a router and a wood nobody knows",
      { routerId: "router_0", woodId: "unobtainium" },
      ["/routerId", "/woodId"],
    ],
    ["fine and not fine", { outcomes: ["fine", "scorched"] }, ["/outcomes"]],
    ["no outcome", { outcomes: [] }, ["/outcomes"]],
    ["less than no metres", { metres: -1 }, ["/metres"]],
    ["a day still to come", { doneAt: "2999-01-01T00:00:00Z" }, ["/doneAt"]],
  ])("is refused with %s and changes nothing", async (_name, given, pointers) => {
    const [bit, router] = [await addBit(shop), await addRouter(shop)];
    const before = await lastSequence(shop);
    const answer = await log(work(bit, router, given));
    expect(answer.status).toBe(422);
    expect(answer.body.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual(pointers);
    expect(await lastSequence(shop)).toBe(before);
  });
});

describe("a bit that moved in its collet", () => {
  test("is held with the collet that was named, and no other", async () => {
    const [bit, router] = [await addBit(shop), await addRouter(shop)];
    const half = await collet(router, "1/2 in", 12.7);
    const spare = await collet(router, "1/2 in, spare", 12.7);
    const { body } = await log(work(bit, router, { outcomes: ["came-loose"], colletId: half.id }));
    expect(await read("bits", bit)).toMatchObject({
      state: "held",
      hold: { cause: "use", causeId: body.id },
    });
    expect(await read("collets", half)).toMatchObject({ condition: "held", hold: { causeId: body.id } });
    expect((await read("collets", spare)).condition).toBe("good");
    expect((await preview(bit, router)).body.code).toBe("bit-not-usable");
  });

  test("is held with every collet that could have held it, if none was named", async () => {
    const [bit, router, other] = [await addBit(shop), await addRouter(shop), await addRouter(shop)];
    const half = await collet(router, "1/2 in", 12.7);
    const worn = await collet(router, "1/2 in, worn", 12.65, "worn");
    const quarter = await collet(router, "1/4 in", 6.35);
    const elsewhere = await collet(other, "1/2 in of the other router", 12.7);
    await log(work(bit, router, { outcomes: ["came-loose", "scorched"] }));
    const conditions = await Promise.all(
      [half, worn, quarter, elsewhere].map(async (each) => (await read("collets", each)).condition),
    );
    expect(conditions).toEqual(["held", "held", "good", "good"]);
  });

  test("cannot have been in another router's collet: that is refused, not passed over", async () => {
    const [bit, router, other] = [await addBit(shop), await addRouter(shop), await addRouter(shop)];
    const elsewhere = await collet(other, "1/2 in of the other router", 12.7);
    const answer = await log(work(bit, router, { outcomes: ["came-loose"], colletId: elsewhere.id }));
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ pointer: "/colletId" }]);
    expect((await read("bits", bit)).state).toBe("in-rack");
  });

  test("keeps the hold it had, and collets keep theirs", async () => {
    const [bit, router] = [await addBit(shop), await addRouter(shop)];
    const half = await collet(router, "1/2 in", 12.7, "retired");
    await shop.ask("POST", `/v1/bits/${bit.id}/hold`, { body: { reason: "A tooth is loose." } });
    await log(work(bit, router, { outcomes: ["came-loose"], colletId: half.id }));
    expect((await read("bits", bit)).hold.reason).toBe("A tooth is loose.");
    expect((await read("collets", half)).condition).toBe("retired");
  });
});

describe("a router whose every collet of a size is out of use", () => {
  test("takes no bit with that shank until one is released", async () => {
    const [bit, router] = [await addBit(shop), await halfInchRouter()];
    const half = await collet(router, "1/2 in", 12.7);
    expect((await preview(bit, router)).body.verdict).toBe("run-with-care");
    const set = (condition: string) =>
      shop.ask("PATCH", `/v1/collets/${half.id}`, { body: { condition }, headers: { "If-Match": "*" } });
    for (const condition of ["held", "retired"]) {
      await set(condition);
      const { body } = await preview(bit, router);
      expect(body.verdict).toBe("do-not-run");
      expect(codesOf(body)).toContain("no-collet-fits");
      expect([body.speed.rpm, body.speed.mark, body.passes]).toEqual([null, null, []]);
      const next = await shop.ask("GET", `/v1/bits/${bit.id}/speed-trials/next?routerId=${router.id}`);
      expect(next.body.kind).toBe("not-possible");
      const fits = await shop.ask("GET", `/v1/bits?fitsRouterId=${router.id}&limit=200`);
      expect(fits.body.data.map(({ id }: Kept) => id)).not.toContain(bit.id);
    }
    await set("worn");
    expect((await preview(bit, router)).body.verdict).toBe("run-with-care");
    expect((await read("collets", half)).hold).toBeUndefined();
  });

  test("takes none either if a smaller collet is left", async () => {
    const [bit, router] = [await addBit(shop), await addRouter(shop)];
    await collet(router, "1/2 in", 12.7, "held");
    await collet(router, "1/4 in", 6.35);
    const answer = await preview(bit, router);
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ pointer: "/bit/shankDiameterMm", accepted: "at most 6.35" }]);
  });

  test("that came loose takes none either: the hold of the collet reaches the next plan", async () => {
    const [bit, other, router] = [await addBit(shop), await addBit(shop), await halfInchRouter()];
    await collet(router, "1/2 in", 12.7);
    await log(work(bit, router, { outcomes: ["came-loose"] }));
    expect(codesOf((await preview(other, router)).body)).toContain("no-collet-fits");
  });
});

describe("what happened warns the next plan", () => {
  test.each([
    ["chattered", "chattered-before"],
    ["scorched", "scorched-before"],
    ["tore-out", "tore-out-before"],
  ])("%s", async (outcome, code) => {
    const [bit, router, other] = [await addBit(shop), await addRouter(shop), await addRouter(shop)];
    const before = await preview(bit, router);
    await log(work(bit, router));
    expect((await preview(bit, router)).text).toBe(before.text);
    await log(work(bit, router, { outcomes: [outcome] }));
    await log(work(bit, router, { outcomes: [outcome] }));
    const { body } = await preview(bit, router);
    expect(codesOf(body)).toContain(code);
    expect(body.findings.find((each: { code: string }) => each.code === code).text).toMatch(/2|twice/);
    const elsewhere =
      outcome === "chattered"
        ? await preview(bit, other)
        : await preview(bit, router, { woodId: "black-walnut" });
    expect(codesOf(elsewhere.body)).not.toContain(code);
  });

  test("a bit that came loose warns in every router once it is released, and sharpening puts burning right", async () => {
    const [bit, router, other] = [await addBit(shop), await addRouter(shop), await addRouter(shop)];
    await log(work(bit, router, { outcomes: ["came-loose", "scorched"], doneAt: "2026-01-05T08:00:00Z" }));
    await made(shop, `/v1/bits/${bit.id}/inspections`, { findings: [], effect: "note" });
    await made(shop, `/v1/bits/${bit.id}/release`, { reason: "Shank and collet cleaned." });
    expect(codesOf((await preview(bit, other)).body)).toContain("came-loose-before");
    expect(codesOf((await preview(bit, router)).body)).toContain("scorched-before");
    await made(shop, `/v1/bits/${bit.id}/sharpenings`, { sharpenedAt: "2026-01-06T08:00:00Z" });
    const codes = codesOf((await preview(bit, router)).body);
    expect(codes).toContain("came-loose-before");
    expect(codes).not.toContain("scorched-before");
  });
});

test("a member logs and sees what they did themselves", async () => {
  const [bit, router] = [await addBit(shop), await addRouter(shop)];
  const [member, other] = [await addSomebody(shop, "member"), await addSomebody(shop, "member")];
  await made(shop, "/v1/loans", { bitId: bit.id, personId: member.id });
  const { body: own } = await log(work(bit, router), member.key);
  expect(own.personId).toBe(member.id);
  const see = (url: string, key: string) => shop.ask("GET", url, { key });
  expect((await see(`/v1/uses/${own.id}`, member.key)).status).toBe(200);
  expect((await see(`/v1/uses/${own.id}`, other.key)).status).toBe(404);
  expect((await see("/v1/uses", other.key)).body.data).toEqual([]);
  expect((await see(`/v1/uses?personId=${member.id}`, other.key)).body.data).toEqual([]);
  expect((await see(`/v1/uses?bitId=${bit.id}`, member.key)).body.data).toEqual([own]);
  const { key } = await made(shop, "/v1/keys", { name: "Screen", role: "member" });
  expect((await log(work(bit, router), key)).body.code).toBe("person-needed");
});
