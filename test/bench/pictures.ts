import { makePlan } from "@rimwise/domain";
import { PICTURES, type Scene, svg } from "@rimwise/drawing";
import { randomPlans } from "../properties/random-plans.ts";
import { EXAMPLE_FORMS } from "../reference/example-forms.ts";
import { PLAN_INPUTS } from "./plan-inputs.ts";

/** Rounds before the clock, and rounds of which the median counts. */
const WARM = 30;
const ROUNDS = 60;
const RANDOM_PLANS = 200;

/** From domain values to SVG text: a bit of every form, and the set-ups of random plans that may be run. */
export async function benchPictures(): Promise<string> {
  const bits = EXAMPLE_FORMS.map(
    (form) => () =>
      PICTURES.bit.draw({
        bit: { form, shankDiameterMm: 12.7, wings: 2 },
        name: "Rack 2",
        units: "metric",
        rpm: 12_000,
      }),
  );
  const planned = [...randomPlans(3, RANDOM_PLANS)].filter(({ plan }) => plan.passes.length > 0);
  const setups = planned.map(
    (each) => () => PICTURES["set-up"].draw({ ...each, name: "Drawer fronts", units: "metric" }),
  );
  const named = Object.entries(PLAN_INPUTS).map(([name, input]) => {
    const plan = makePlan(input);
    return [
      `set-up: ${name}`,
      [() => PICTURES["set-up"].draw({ input, plan, name, units: "metric" })],
    ] as const;
  });
  const rows = [["bit, every form", bits] as const, ["set-up, random plans", setups] as const, ...named].map(
    ([name, draws]) => rowOf(name, draws),
  );
  return [
    "Pictures, from domain values to SVG: median and slowest of the things drawn, in µs, and the largest in kB",
    ...rows,
  ].join("\n");
}

function rowOf(name: string, draws: readonly (() => Scene)[]): string {
  const write = draws.map((draw) => () => svg(draw()));
  for (let round = 0; round < WARM; round += 1) for (const each of write) each();
  const times = write.map((each) => median(Array.from({ length: ROUNDS }, () => timedUs(each))));
  const largest = Math.max(...write.map((each) => each().length)) / 1000;
  const figure = (us: number) => us.toFixed(0).padStart(6);
  return `  ${name.padEnd(36)}${figure(median(times))} µs ${figure(Math.max(...times))} µs ${largest.toFixed(1).padStart(7)} kB`;
}

function timedUs(run: () => unknown): number {
  const start = performance.now();
  run();
  return (performance.now() - start) * 1000;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
