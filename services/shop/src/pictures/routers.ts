import {
  type Bit,
  bitCeilings,
  type DialSpeed,
  dialSpeeds,
  formDiameterMm,
  hasColletFor,
  type Policy,
  type Router,
} from "@rimwise/domain";
import { type DrawnUnits, PICTURES, type Scene } from "@rimwise/drawing";
import Type from "typebox";
import { bareBit } from "../bits/bare.ts";
import { bits } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import { isUsable } from "../bits/standing.ts";
import type { App } from "../http/app-type.ts";
import { idList } from "../http/identity-filters.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
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
          const router = yield* usableRouter(record, at, policy);
          const shown = ids === undefined ? yield* bitsFor(router) : yield* bitsNamed(ids);
          return routerScene({ router, policy, name: record.name, units }, shown, kind);
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
function routerScene(drawn: Drawn, shown: readonly BitRecord[], kind: "dial" | "diameter-speed"): Scene {
  const { router, policy, name, units } = drawn;
  const speeds = dialSpeeds(router, policy);
  const fastest = shown.map((record) => {
    const bit = bareBit(record);
    return { name: record.name, bit, setting: fastestOf(bit, speeds, policy) };
  });
  if (kind === "dial") {
    return PICTURES.dial.draw({
      ...drawn,
      bits: fastest.map(({ name, setting }) => ({ name, mark: setting?.mark, rpm: setting?.rpm })),
    });
  }
  return PICTURES["diameter-speed"].draw({
    policy,
    name,
    units,
    bits: fastest.flatMap(({ name, bit, setting }) =>
      setting === undefined ? [] : [{ name, diameterMm: formDiameterMm(bit.form), rpm: setting.rpm }],
    ),
  });
}

/** The fastest mark at which no hard limit can be broken and no guide is exceeded; undefined if there is none. */
export function fastestOf(bit: Bit, speeds: readonly DialSpeed[], policy: Policy): DialSpeed | undefined {
  const { hard, guide } = bitCeilings(bit, policy);
  return speeds
    .filter(({ rpm, rpmHighest }) => rpmHighest <= hard && rpm <= guide)
    .reduce<DialSpeed | undefined>(
      (best, speed) => (best === undefined || speed.rpm > best.rpm ? speed : best),
      undefined,
    );
}

/** The first bits of the rack that a collet of the router takes and that may be used. */
function* bitsFor(router: Router): Question<BitRecord[]> {
  const fitting: BitRecord[] = [];
  let after = "";
  while (fitting.length < MOST_BITS) {
    const page = yield* bits.page(after, PAGE);
    fitting.push(...page.filter((bit) => isUsable(bit) && hasColletFor(bit.shankDiameterMm, router)));
    const last = page.at(-1);
    if (last === undefined || page.length < PAGE) break;
    after = last.id;
  }
  return fitting.slice(0, MOST_BITS);
}

const PAGE = 100;

function* bitsNamed(ids: string): Question<BitRecord[]> {
  const named = [...new Set(ids.split(","))];
  if (named.length > MOST_BITS) throw notValid([faultOf(`These are ${named.length} bits.`)]);
  const found: BitRecord[] = [];
  for (const id of named) {
    const bit = yield* bits.find(id);
    if (bit === undefined) throw notValid([faultOf(`There is no bit ${id}.`)]);
    found.push(bit);
  }
  return found;
}

function faultOf(message: string): FieldFault {
  return {
    in: "query",
    pointer: "/ids",
    message,
    accepted: `at most ${MOST_BITS} ids that GET /v1/bits lists`,
  };
}
