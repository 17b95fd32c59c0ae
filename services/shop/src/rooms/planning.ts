import type { App } from "../http/app-type.ts";
import { outlineRoutes } from "../outlines/routes.ts";
import { panelRoutes } from "../panels/routes.ts";
import { planRoutes } from "../plans/routes.ts";
import { policyRoutes } from "../policy/routes.ts";
import { shopPolicyRoutes } from "../shop-policy/routes.ts";
import { woodRoutes } from "../woods/routes.ts";
import type { Context } from "./context.ts";

/** What is computed, and what it is judged by. */
export function planningRooms(app: App, { all, sources, ...doors }: Context): void {
  outlineRoutes(app);
  woodRoutes(app, { reads: all.woods });
  policyRoutes(app);
  shopPolicyRoutes(app, { ...doors, reads: all.shopPolicies });
  planRoutes(app, { ...doors, reads: all.plans, sources });
  panelRoutes(app, { sources });
}
