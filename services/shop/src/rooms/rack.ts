import { bitRoutes } from "../bits/routes.ts";
import { bitStandingRoutes } from "../bits/standing-routes.ts";
import { colletRoutes } from "../collets/routes.ts";
import { dialReadingRoutes } from "../dial-readings/routes.ts";
import type { App } from "../http/app-type.ts";
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
import { useRoutes } from "../uses/routes.ts";
import type { Context } from "./context.ts";

/** The rack, the routers, and what is learned about them. */
export function rackRooms(app: App, { all, sources, ...doors }: Context, publicUrl: string): void {
  bitRoutes(app, { ...all, ...doors, reads: all.bits });
  bitStandingRoutes(app, { ...doors, reads: all.bits });
  photographRoutes(app, { ...all, ...doors, reads: all.photographs });
  labelRoutes(app, { ...all, publicUrl });
  importRoutes(app, { ...all, ...doors, reads: all.imports });
  placeRoutes(app, { ...all, ...doors, reads: all.places });
  loanRoutes(app, { ...all, ...doors, reads: all.loans });
  inspectionRoutes(app, { ...all, ...doors, reads: all.inspections });
  sharpeningRoutes(app, { ...all, ...doors, reads: all.sharpenings });
  routerRoutes(app, { ...doors, reads: all.routers });
  dialReadingRoutes(app, { ...all, ...doors, reads: all.dialReadings });
  colletRoutes(app, { ...all, ...doors, reads: all.collets });
  runOutRoutes(app, { ...all, ...doors, reads: all.runOuts });
  speedTrialRoutes(app, { ...doors, reads: all.trials, sources });
  useRoutes(app, { ...all, ...doors, reads: all.uses });
  stockRoutes(app, { ...doors, reads: all.stock });
}
