import { benchHttp } from "./http.ts";
import { benchPlans } from "./plans.ts";

const [only] = process.argv.slice(2);
const BENCHES = { plans: benchPlans, http: benchHttp };

for (const [name, bench] of Object.entries(BENCHES)) {
  if (only === undefined || only === name) process.stdout.write(`${await bench()}\n\n`);
}
