import { bitRoutes } from "../bits/routes.ts";
import { bitStateRoutes } from "../bits/state-routes.ts";
import { colletRoutes } from "../collets/routes.ts";
import { dialReadingRoutes } from "../dial-readings/routes.ts";
import type { App } from "../http/app-type.ts";
import type { Doors } from "../http/routes.ts";
import { importRoutes } from "../imports/routes.ts";
import { inspectionRoutes } from "../inspections/routes.ts";
import { labelRoutes } from "../labels/routes.ts";
import { loanRoutes } from "../loans/routes.ts";
import { photographRoutes } from "../photographs/routes.ts";
import { placeRoutes } from "../places/routes.ts";
import { routerRoutes } from "../routers/routes.ts";
import { runOutRoutes } from "../run-out-readings/routes.ts";
import { sharpeningRoutes } from "../sharpenings/routes.ts";
import { speedTrialRoutes } from "../speed-trials/routes.ts";
import { stockRoutes } from "../stock/routes.ts";
import { trialProposalRoutes } from "../trial-proposals/routes.ts";
import { useRoutes } from "../uses/routes.ts";

/** The rack, the routers, and what is learned about them. */
export function rackRooms(app: App, doors: Doors, publicUrl: string): void {
  bitRoutes(app, doors);
  bitStateRoutes(app, doors);
  photographRoutes(app, doors);
  labelRoutes(app, doors, publicUrl);
  importRoutes(app, doors);
  placeRoutes(app, doors);
  loanRoutes(app, doors);
  inspectionRoutes(app, doors);
  sharpeningRoutes(app, doors);
  routerRoutes(app, doors);
  dialReadingRoutes(app, doors);
  colletRoutes(app, doors);
  runOutRoutes(app, doors);
  speedTrialRoutes(app, doors);
  trialProposalRoutes(app, doors);
  useRoutes(app, doors);
  stockRoutes(app, doors);
}
