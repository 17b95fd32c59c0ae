import { benchHttp } from "./http.ts";
import { benchPlans } from "./plans.ts";
import { benchShop } from "./shop.ts";

const [only] = process.argv.slice(2);
const BENCHES = { plans: benchPlans, shop: benchShop, http: benchHttp };

for (const [name, bench] of Object.entries(BENCHES)) {
  if (only === undefined || only === name) process.stdout.write(`${await bench()}\n\n`);
}
