import { expect, test } from "vitest";
import { addBit, addRouter, made, planFor } from "./crib.ts";
import { openShop } from "./shop.ts";

test("a plan is answered in the parts that were asked for, as they stand in the whole of it", async () => {
  const shop = await openShop();
  const body = planFor(await addBit(shop), await addRouter(shop));
  const whole = await made(shop, "/v1/plans/preview", body);
  const { verdict, speed, passes, advice } = whole;
  const parts = await made(shop, "/v1/plans/preview?fields=passes,speed", body);
  expect(parts).toEqual({ verdict, speed, passes, advice });
  expect(Object.keys(parts)[0], "the verdict first").toBe("verdict");
  expect(await made(shop, "/v1/plans/preview?fields=passes&fields=speed", body)).toEqual(parts);
  expect(await made(shop, "/v1/plans/preview?fields=advice", body), "no speed without them").toEqual({
    verdict,
    advice,
  });

  const stored = await made(shop, "/v1/plans", body);
  const read = await shop.ask("GET", `/v1/plans/${stored.id}?fields=speed`);
  expect(read.body).toEqual({ ...stored, plan: { verdict, speed: stored.plan.speed, advice } });
  expect(read.headers["etag"]).toBe('"1"');
});

test("a batch answers the parts of each plan, and the problem of each request that has none", async () => {
  const shop = await openShop();
  const router = await addRouter(shop);
  const good = planFor(await addBit(shop), router);
  const large = planFor(await addBit(shop), router, { mounting: "handheld" });
  const requests = [good, planFor({ id: "bit_none" }, router), large];
  const { results } = await made(shop, "/v1/plans/preview-batch?fields=speed", { requests });
  expect(Object.keys(results[0].plan)).toEqual(["verdict", "speed", "advice"]);
  expect(results[1].problem).toMatchObject({ status: 422, errors: [{ pointer: "/bit/id" }] });
  expect(results[2].plan).toMatchObject({ verdict: "do-not-run", speed: { rpm: null } });
});

test.each(["tempo", "", "speed,"])("?fields=%s is refused, naming what is accepted", async (fields) => {
  const shop = await openShop();
  const body = planFor(await addBit(shop), await addRouter(shop));
  const refused = await shop.ask("POST", `/v1/plans/preview?fields=${fields}`, { body });
  expect(refused.status).toBe(422);
  const [{ pointer, accepted }] = refused.body.errors;
  expect(pointer).toMatch(/^\/fields/);
  expect(accepted).toContain("precautions");
});
