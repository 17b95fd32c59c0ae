import { expect, test } from "vitest";
import { writeFileSync } from "node:fs";
import { openShop, PANEL_BIT } from "./shop.ts";
import { NDJSON, sendFile } from "./import-files.ts";
test("try", async () => {
  const shop = await openShop();
  const bit = {"name":"\u0000","form":{"kind":"slot-cutter","diameterMm":20,"slotWidthMm":1,"arborLengthMm":1},"shankDiameterMm":3,"wings":1};
  const a = await shop.ask("POST", "/v1/bits", { body: bit });
  const b = await sendFile(shop, JSON.stringify(bit), {type: NDJSON});
  const c = await sendFile(shop, JSON.stringify({...bit, name: "x"}), {type: NDJSON});
  writeFileSync("/tmp/zz/out.json", JSON.stringify([a.body,b.body,c.body], null, 1)); writeFileSync("/tmp/zz/log", shop.log());
});
