import { cardOf } from "./card.ts";
import { EVERYDAY_PLANS, everydayPlan } from "./plans.ts";

const units = process.env["CARD_UNITS"] === "imperial" ? "imperial" : "metric";

for (const each of EVERYDAY_PLANS) {
  process.stdout.write(`${cardOf(each.name, everydayPlan(each, units), units)}\n\n`);
}
