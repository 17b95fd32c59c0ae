import { benchApprovals } from "./approvals.ts";
import { benchClient } from "./client.ts";
import { benchCreates } from "./creates.ts";
import { benchDay } from "./day.ts";
import { benchEngines } from "./engines.ts";
import { benchHttp } from "./http.ts";
import { benchImport } from "./import.ts";
import { benchJobs } from "./jobs.ts";
import { benchPictures } from "./pictures.ts";
import { benchPlans } from "./plans.ts";
import { benchReads } from "./reads.ts";
import { benchSearch } from "./search.ts";
import { benchSheets } from "./sheets.ts";
import { benchShop } from "./shop.ts";

const [only] = process.argv.slice(2);
const BENCHES = {
  plans: benchPlans,
  pictures: benchPictures,
  sheets: benchSheets,
  day: benchDay,
  search: benchSearch,
  jobs: benchJobs,
  shop: benchShop,
  http: benchHttp,
  approvals: benchApprovals,
  import: benchImport,
  reads: benchReads,
  creates: benchCreates,
  engines: benchEngines,
  client: benchClient,
};

for (const [name, bench] of Object.entries(BENCHES)) {
  if (only === undefined || only === name) process.stdout.write(`${await bench()}\n\n`);
}
