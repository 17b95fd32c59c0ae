import { expect, test } from "vitest";
import { addBit, addRouter, planFor } from "./crib.ts";
import { openShop } from "./shop.ts";

const MINIMAL = { Prefer: "respond-async, return=minimal" };

test("a caller who prefers no body gets none of what they create or change, but where it is and its version", async () => {
  const shop = await openShop();
  const body = planFor(await addBit(shop), await addRouter(shop));
  const created = await shop.ask("POST", "/v1/plans", {
    body,
    headers: { ...MINIMAL, "Idempotency-Key": "1" },
  });
  expect([created.status, created.text]).toEqual([201, ""]);
  expect(created.headers).toMatchObject({ etag: '"1"', "preference-applied": "return=minimal" });
  const again = await shop.ask("POST", "/v1/plans", {
    body,
    headers: { ...MINIMAL, "Idempotency-Key": "1" },
  });
  expect([again.text, again.headers["idempotent-replayed"], again.headers["location"]]).toEqual([
    ...["", "true", created.headers["location"]],
  ]);
  const whole = await shop.ask("POST", "/v1/plans", { body, headers: { "Idempotency-Key": "1" } });
  expect(whole.body.plan.verdict, "with a body once it is preferred").toBe("run-with-care");
  expect(whole.headers["preference-applied"]).toBeUndefined();

  const bit = await addBit(shop);
  const url = `/v1/bits/${bit.id}`;
  const changed = await shop.ask("PATCH", url, {
    body: { notes: "Left." },
    headers: { ...MINIMAL, "If-Match": "*" },
  });
  expect([changed.status, changed.text, changed.headers["etag"]]).toEqual([204, "", '"2"']);
  const refused = await shop.ask("PATCH", url, {
    body: { wings: 99 },
    headers: { ...MINIMAL, "If-Match": "*" },
  });
  expect([refused.status, refused.body.errors[0].pointer]).toEqual([422, "/wings"]);
  expect((await shop.ask("GET", url, { headers: MINIMAL })).body.notes).toBe("Left.");
});
