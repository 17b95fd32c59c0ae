import { cardOf } from "./card.ts";
import { EVERYDAY_PLANS, everydayPlan } from "./plans.ts";

for (const each of EVERYDAY_PLANS) process.stdout.write(`${cardOf(each.name, everydayPlan(each))}\n\n`);
