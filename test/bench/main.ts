import { benchApprovals } from "./approvals.ts";
import { benchHttp } from "./http.ts";
import { benchPlans } from "./plans.ts";
import { benchShop } from "./shop.ts";

const [only] = process.argv.slice(2);
const BENCHES = { plans: benchPlans, shop: benchShop, http: benchHttp, approvals: benchApprovals };

for (const [name, bench] of Object.entries(BENCHES)) {
  if (only === undefined || only === name) process.stdout.write(`${await bench()}\n\n`);
}
