import {
  type Bit,
  bitCeilings,
  type DialSpeed,
  dialSpeeds,
  formDiameterMm,
  type Policy,
  type Router,
} from "@rimwise/domain";
import { type DrawnUnits, PICTURES, type Scene } from "@rimwise/drawing";
import Type from "typebox";
import { calledWithNumber } from "../bits/called.ts";
import { bitFilters } from "../bits/list-query.ts";
import { bits, type FoundBit } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import { isUsable } from "../bits/standing.ts";
import type { App } from "../http/app-type.ts";
import { idList } from "../http/identity-filters.ts";
import { namedInQuery } from "../http/named-records.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { bitIn, type KnownRouter, knownBit, trialsFor } from "../learned/learned.ts";
import { routers } from "../routers/kind.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import type { Question } from "../store/query.ts";
import { usableRouter } from "../usable-routers/reads.ts";
import { pictureRoute } from "./picture-route.ts";

/** So many bits can be told apart on one picture. */
const MOST_BITS = 24;

export function routerPictureRoutes(app: App, doors: Doors): void {
  pictureRoute(
    app,
    doors,
    {
      scope: "routers:read",
      tag: "routers",
      path: "/v1/routers/:routerId/picture",
      operationId: "getRouterPicture",
      summary: "The dial of a router with the fastest mark for each bit, or its bits by diameter and speed",
      kinds: ["dial", "diameter-speed"],
      query: Type.Object({
        ids: Type.Optional(idList),
      }),
    },
    ({ params: { routerId }, query: { kind, units, ids }, at }) =>
      doors.answer(
        (function* () {
          const record = requireFound(routers.kind, routerId, yield* routers.find(routerId));
          const policy = yield* shopPolicy();
          const known = { record, usable: yield* usableRouter(record, at, policy) };
          const shown =
            ids === undefined
              ? yield* bitsFor(known.usable, policy, MOST_BITS)
              : yield* namedInQuery(ids, bits, MOST_BITS);
          const fastest: FastestBit[] = [];
          for (const bit of shown) fastest.push(yield* fastestIn(known, bit, at, policy));
          return routerScene({ router: known.usable, policy, name: record.name, units }, fastest, kind);
        })(),
      ),
  );
}

type Drawn = {
  readonly router: Router;
  readonly policy: Policy;
  readonly name: string;
  readonly units: DrawnUnits;
};

/** A bit's fastest setting on a router's dial is the one to start from: a plan of the cut may ask for less. */
function routerScene(drawn: Drawn, fastest: readonly FastestBit[], kind: "dial" | "diameter-speed"): Scene {
  const { policy, name, units } = drawn;
  if (kind === "dial") {
    return PICTURES.dial.draw({
      ...drawn,
      bits: fastest.map(({ called, setting }) => ({
        name: called,
        mark: setting?.mark,
        rpm: setting?.rpm,
      })),
    });
  }
  return PICTURES["diameter-speed"].draw({
    policy,
    name,
    units,
    bits: fastest.flatMap(({ called, bit, setting }) =>
      setting === undefined ? [] : [{ name: called, diameterMm: formDiameterMm(bit.form), rpm: setting.rpm }],
    ),
  });
}

/** A bit of the rack with the fastest setting that it may run at in a router, and what it never goes above. */
export type FastestBit = {
  /** What the shop calls it, with its number. */
  readonly called: string;
  readonly bit: Bit;
  readonly setting: DialSpeed | undefined;
  readonly ceilingRpm: number;
};

/**
 * The fastest mark at which no hard limit can be broken and no guide is exceeded, by everything that was learned of the bit in this router; no
 * setting if there is none.
 */
export function* fastestIn(
  router: KnownRouter,
  record: BitRecord,
  at: string,
  policy: Policy,
): Question<FastestBit> {
  const { learned } = requireFound(bits.kind, record.id, yield* knownBit(record.id, at, policy));
  const bit = bitIn(router.record.id, record, learned);
  const { hard, guide } = bitCeilings(bit, policy, trialsFor(router, learned, policy));
  const setting = dialSpeeds(router.usable, policy)
    .filter(({ rpm, rpmHighest }) => rpmHighest <= hard && rpm <= guide)
    .reduce<DialSpeed | undefined>(
      (best, speed) => (best === undefined || speed.rpm > best.rpm ? speed : best),
      undefined,
    );
  return { called: yield* calledWithNumber(record), bit, setting, ceilingRpm: Math.min(hard, guide) };
}

/** The first bits of the rack that a collet of the router takes and that may be used. */
export function* bitsFor(router: Router, policy: Policy, most: number): Question<BitRecord[]> {
  const speeds = dialSpeeds(router, policy);
  const filters = bitFilters({ limit: PAGE }, { router, speeds }).map(({ runsAt: _all, ...fits }) => fits);
  const fitting: BitRecord[] = [];
  let after = { filter: 0, number: 0 };
  for (let looked = 0; looked < MOST_LOOKED && fitting.length < most; looked += PAGE) {
    const page: FoundBit[] = yield* bits.searchBestFirst(after, PAGE, filters);
    fitting.push(...page.map(({ record }) => record).filter(isUsable));
    const last = page.at(-1);
    if (last === undefined || page.length < PAGE) break;
    after = last;
  }
  return fitting.slice(0, most);
}

const PAGE = 100;
/** Those that are held or retired are passed over; of a rack that holds more of them nobody is kept waiting. */
const MOST_LOOKED = 1000;
