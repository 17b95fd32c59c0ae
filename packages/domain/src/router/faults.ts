import { type Fault, faultsUnder } from "../quantity/fault.ts";
import { rangeFaults } from "../quantity/range.ts";
import { markPosition } from "./mark.ts";
import { type Dial, ROUTER_RANGES, type Router } from "./router.ts";

/**
 * Everything wrong with a router: fields outside their range, then a dial whose marks or readings contradict each other.
 * Pointers start at the router.
 * @example
 * routerFaults({ minRpm: 22_000, maxRpm: 10_000 })[0].code // → "min-above-max"
 */
export function routerFaults(router: Router): Fault[] {
  const single = [
    ...rangeFaults("/minRpm", router.minRpm, ROUTER_RANGES.rpm),
    ...rangeFaults("/maxRpm", router.maxRpm, ROUTER_RANGES.rpm),
    ...rangeFaults("/inputPowerW", router.inputPowerW, ROUTER_RANGES.inputPowerW),
    ...(router.colletDiametersMm ?? []).flatMap((diameterMm, index) =>
      rangeFaults(`/colletDiametersMm/${index}`, diameterMm, ROUTER_RANGES.colletDiametersMm),
    ),
  ];
  const order: Fault[] =
    router.minRpm > router.maxRpm
      ? [{ pointer: "/minRpm", code: "min-above-max", values: { given: router.minRpm, max: router.maxRpm } }]
      : [];
  return [...single, ...order, ...faultsUnder("/dial", router.dial ? dialFaults(router.dial) : [])];
}

function dialFaults(dial: Dial): Fault[] {
  const { first, last } = dial.marks;
  if (typeof first !== typeof last) return [{ pointer: "/marks", code: "marks-mixed", values: {} }];
  const firstPosition = markPosition(first);
  const lastPosition = markPosition(last);
  const marks = [
    ...rangeFaults("/marks/first", firstPosition, ROUTER_RANGES.mark),
    ...rangeFaults("/marks/last", lastPosition, ROUTER_RANGES.mark),
    ...rangeFaults("/steps", dial.steps, ROUTER_RANGES.steps),
  ];
  if (marks.length > 0) return marks;
  if (firstPosition >= lastPosition) {
    return [
      { pointer: "/marks/last", code: "out-of-range", values: { given: String(last), above: String(first) } },
    ];
  }
  return readingFaults(dial, firstPosition, lastPosition);
}

function readingFaults(dial: Dial, firstPosition: number, lastPosition: number): Fault[] {
  const faults: Fault[] = [];
  let lowerPosition = Number.NEGATIVE_INFINITY;
  let lowerRpm = 0;
  for (const [index, { mark, rpm }] of (dial.readings ?? []).entries()) {
    const pointer = `/readings/${index}`;
    const position = markPosition(mark);
    if (typeof mark !== typeof dial.marks.first || !(position >= firstPosition && position <= lastPosition)) {
      const { first, last } = dial.marks;
      faults.push({ pointer: `${pointer}/mark`, code: "mark-off-dial", values: { first, last } });
      continue;
    }
    faults.push(...rangeFaults(`${pointer}/rpm`, rpm, ROUTER_RANGES.rpm));
    if (position <= lowerPosition) {
      faults.push({
        pointer: `${pointer}/mark`,
        code: "readings-do-not-rise",
        values: { above: lowerPosition },
      });
    } else if (rpm <= lowerRpm) {
      faults.push({ pointer: `${pointer}/rpm`, code: "readings-do-not-rise", values: { above: lowerRpm } });
    }
    lowerPosition = position;
    lowerRpm = rpm;
  }
  return faults;
}
