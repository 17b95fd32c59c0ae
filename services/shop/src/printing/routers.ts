import { clearanceOf, formDiameterMm } from "@rimwise/domain";
import { type ChartBit, wallChartCard, wallChartSheet } from "@rimwise/drawing";
import Type from "typebox";
import { bits } from "../bits/reads.ts";
import type { App } from "../http/app-type.ts";
import { idList } from "../http/identity-filters.ts";
import { namedInQuery } from "../http/named-records.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { dayIn, type ShopPlace } from "../http/shop-place.ts";
import { bitsFor, fastestIn } from "../pictures/routers.ts";
import { routers } from "../routers/kind.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { usableRouter } from "../usable-routers/reads.ts";
import { printRoute } from "./print-route.ts";

/** As many rows as are still found on a wall, and as ids can be named. */
const MOST_BITS = 200;

export function routerPrintRoutes(app: App, doors: Doors, { timeZone }: ShopPlace): void {
  printRoute(
    app,
    doors,
    {
      scope: "routers:read",
      tag: "routers",
      path: "/v1/routers/:routerId/printout",
      operationId: "getRouterPrintout",
      summary:
        "The wall chart of a router: its bits with mark, speed, how they are held and what they never go above",
      usualPaper: "a4",
      query: Type.Object({ ids: Type.Optional(idList) }),
    },
    async ({ params: { routerId }, query: { units, paper, ids }, at, turns }) => {
      const { known, policy, shown } = await doors.answer(
        (function* () {
          const record = requireFound(routers.kind, routerId, yield* routers.find(routerId));
          const policy = yield* shopPolicy();
          const usable = yield* usableRouter(record, at, policy);
          const shown =
            ids === undefined
              ? yield* bitsFor(usable, policy, MOST_BITS + 1)
              : yield* namedInQuery(ids, bits, MOST_BITS);
          return { known: { record, usable }, policy, shown };
        })(),
      );
      const rows: ChartBit[] = [];
      for (const record of shown.slice(0, MOST_BITS)) {
        const { called, bit, setting, ceilingRpm } = await doors.answer(fastestIn(known, record, at, policy));
        rows.push({
          name: called,
          diameterMm: formDiameterMm(bit.form),
          shankDiameterMm: bit.shankDiameterMm,
          setting,
          clearance: clearanceOf(bit, policy),
          ceilingRpm,
        });
        await turns();
      }
      const chart = {
        router: known.record.name,
        bits: rows.sort((one, other) => one.name.localeCompare(other.name, "en", { numeric: true })),
        isAll: shown.length <= MOST_BITS,
        asOfDay: dayIn(timeZone, at),
      };
      return {
        pages: () => wallChartSheet({ ...chart, units, paper }),
        card: () => wallChartCard({ ...chart, units }),
      };
    },
  );
}
