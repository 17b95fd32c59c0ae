import type { App } from "../http/app-type.ts";
import type { Doors } from "../http/routes.ts";
import type { ShopPlace } from "../http/shop-place.ts";
import { approvalPrintRoutes } from "../printing/approvals.ts";
import { jobPrintRoutes } from "../printing/jobs.ts";
import { planPrintRoutes } from "../printing/plans.ts";
import { routerPrintRoutes } from "../printing/routers.ts";

/** What is taken to the machine on paper. Register after the rooms whose schemas the requests are made of. */
export function printingRooms(app: App, doors: Doors, place: ShopPlace): void {
  planPrintRoutes(app, doors);
  approvalPrintRoutes(app, doors, place);
  jobPrintRoutes(app, doors);
  routerPrintRoutes(app, doors, place);
}
