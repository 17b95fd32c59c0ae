import { type Fault, faultsUnder } from "../quantity/fault.ts";
import { rangeFaults } from "../quantity/range.ts";
import { markPosition } from "./mark.ts";
import { believableRpm, readingsContradict } from "./reading.ts";
import { type Dial, type DialReading, ROUTER_RANGES, type Router } from "./router.ts";

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
  if (single.length > 0) return single;
  // What a reading is held against means nothing on a plate that contradicts itself.
  if (router.minRpm > router.maxRpm) {
    return [
      { pointer: "/minRpm", code: "min-above-max", values: { given: router.minRpm, max: router.maxRpm } },
    ];
  }
  return router.dial === undefined ? [] : faultsUnder("/dial", dialFaults(router, router.dial));
}

function dialFaults(router: Router, dial: Dial): Fault[] {
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
  return readingFaults(router, dial, firstPosition, lastPosition);
}

function readingFaults(router: Router, dial: Dial, firstPosition: number, lastPosition: number): Fault[] {
  const faults: Fault[] = [];
  const { first, last } = dial.marks;
  let lowerPosition = Number.NEGATIVE_INFINITY;
  let lower: DialReading | undefined;
  for (const [index, reading] of (dial.readings ?? []).entries()) {
    const pointer = `/readings/${index}`;
    const { mark, rpm, isConfirmed = false } = reading;
    const position = markPosition(mark);
    if (typeof mark !== typeof first || !(position >= firstPosition && position <= lastPosition)) {
      faults.push({ pointer: `${pointer}/mark`, code: "mark-off-dial", values: { first, last } });
      continue;
    }
    if (position < lowerPosition) {
      faults.push({
        pointer: `${pointer}/mark`,
        code: "marks-do-not-rise",
        values: { least: lowerPosition },
      });
    }
    lowerPosition = position;
    const outside = rangeFaults(`${pointer}/rpm`, rpm, ROUTER_RANGES.rpm);
    faults.push(...outside);
    if (outside.length > 0 || isConfirmed) continue;
    faults.push(...faultsUnder(pointer, unlikelyReadingFaults(router, reading, lower)));
    lower = reading;
  }
  return faults;
}

/**
 * What makes a reading hard to believe unless somebody confirms it: the router's range, or another reading that it is held
 * against. Pointers start at the reading.
 * @example
 * unlikelyReadingFaults({ minRpm: 23_000, maxRpm: 30_000 }, { mark: 1, rpm: 1100 })[0].code // → "reading-outside-range"
 */
export function unlikelyReadingFaults(router: Router, reading: DialReading, against?: DialReading): Fault[] {
  const { rpm: given } = reading;
  const { min, max } = believableRpm(router);
  if (given < min || given > max) {
    return [{ pointer: "/rpm", code: "reading-outside-range", values: { given, min, max } }];
  }
  if (against === undefined || !readingsContradict(against, reading)) return [];
  const { mark, rpm } = against;
  const apart = markPosition(reading.mark) - markPosition(mark);
  if (apart === 0) return [{ pointer: "/rpm", code: "readings-disagree", values: { mark, rpm } }];
  const values = apart > 0 ? { above: rpm } : { below: rpm };
  return [{ pointer: "/rpm", code: "readings-do-not-rise", values }];
}
