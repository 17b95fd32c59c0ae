import { makePlan } from "@rimwise/domain";
import { Bench } from "tinybench";
import { PLAN_INPUTS } from "./plan-inputs.ts";

/** One plan in process: median microseconds, and as a multiple of reading and writing its input as JSON. */
export async function benchPlans(): Promise<string> {
  const bench = new Bench({ time: 1000, warmupTime: 500 });
  for (const [name, input] of Object.entries(PLAN_INPUTS)) {
    const text = JSON.stringify(input);
    bench.add(`JSON ${name}`, () => void JSON.stringify(JSON.parse(text)));
    bench.add(`plan ${name}`, () => void makePlan(input));
  }
  await bench.run();
  const median = (task: string) => {
    const result = bench.getTask(task)?.result;
    return result !== undefined && "latency" in result ? result.latency.p50 * 1000 : Number.NaN;
  };
  const rows = Object.keys(PLAN_INPUTS).map((name) => {
    const plan = median(`plan ${name}`);
    return `  ${name.padEnd(28)} ${plan.toFixed(1).padStart(7)} µs   ${(plan / median(`JSON ${name}`)).toFixed(1).padStart(5)} × its input through JSON`;
  });
  return ["One plan in process (median)", ...rows].join("\n");
}
