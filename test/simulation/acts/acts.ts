import fc from "fast-check";
import { ACTORS, LEARNERS, PERSONS } from "../people.ts";
import type { Prepare } from "./act.ts";
import { bringBack, lend } from "./lending.ts";
import { decide, draft, enrol } from "./teaching.ts";
import { hold, inspect, release, weigh } from "./upkeep.ts";

/** An act as data: its name, and what it is done with. */
export type Act =
  | ["lend", ...Parameters<typeof lend>]
  | ["bring-back", ...Parameters<typeof bringBack>]
  | ["hold", ...Parameters<typeof hold>]
  | ["inspect", ...Parameters<typeof inspect>]
  | ["release", ...Parameters<typeof release>]
  | ["weigh", ...Parameters<typeof weigh>]
  | ["draft", ...Parameters<typeof draft>]
  | ["decide", ...Parameters<typeof decide>]
  | ["enrol", ...Parameters<typeof enrol>];

const who = fc.constantFrom(...ACTORS);
const some = fc.nat(11);
const course = fc.constantFrom(0, 1);
const staff = fc.constantFrom("head", "ann", "ben", "kiosk", "ann", "ben") satisfies fc.Arbitrary<string>;

/** Any act; what a class lives by comes more often. */
export const anyAct: fc.Arbitrary<Act> = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(fc.constant("lend"), who, some, fc.constantFrom(...PERSONS)) },
  { weight: 3, arbitrary: fc.tuple(fc.constant("bring-back"), who, some) },
  { weight: 1, arbitrary: fc.tuple(fc.constant("hold"), who, some) },
  {
    weight: 2,
    arbitrary: fc.tuple(
      fc.constant("inspect"),
      who,
      some,
      fc.oneof(
        { weight: 20, arbitrary: fc.constant("note") },
        { weight: 2, arbitrary: fc.constant("hold") },
        { weight: 1, arbitrary: fc.constant("retire") },
      ),
    ),
  },
  { weight: 2, arbitrary: fc.tuple(fc.constant("release"), staff, some) },
  {
    weight: 3,
    arbitrary: fc.tuple(fc.constant("weigh"), who, some, fc.integer({ min: 200, max: 960 }), fc.boolean()),
  },
  {
    weight: 4,
    arbitrary: fc.tuple(fc.constant("draft"), staff, course, some, fc.integer({ min: 1, max: 200 })),
  },
  {
    weight: 6,
    arbitrary: fc.tuple(
      fc.constant("decide"),
      fc.oneof({ weight: 4, arbitrary: staff }, who),
      some,
      fc.constantFrom("issue", "issue", "issue", "withdraw"),
    ),
  },
  {
    weight: 2,
    arbitrary: fc.tuple(fc.constant("enrol"), who, course, fc.constantFrom(...LEARNERS), fc.boolean()),
  },
);

/** An act made ready. */
export function prepareOf(act: Act): Prepare {
  switch (act[0]) {
    case "lend":
      return lend(act[1], act[2], act[3]);
    case "bring-back":
      return bringBack(act[1], act[2]);
    case "hold":
      return hold(act[1], act[2]);
    case "inspect":
      return inspect(act[1], act[2], act[3]);
    case "release":
      return release(act[1], act[2]);
    case "weigh":
      return weigh(act[1], act[2], act[3], act[4]);
    case "draft":
      return draft(act[1], act[2], act[3], act[4]);
    case "decide":
      return decide(act[1], act[2], act[3]);
    case "enrol":
      return enrol(act[1], act[2], act[3], act[4]);
  }
}
