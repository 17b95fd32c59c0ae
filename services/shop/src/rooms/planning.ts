import { admission } from "../http/admission.ts";
import type { App } from "../http/app-type.ts";
import type { Doors } from "../http/routes.ts";
import { jointRoutes } from "../joints/routes.ts";
import { outlineRoutes } from "../outlines/routes.ts";
import { panelRoutes } from "../panels/routes.ts";
import { planRoutes } from "../plans/routes.ts";
import { policyRoutes } from "../policy/routes.ts";
import { profileRoutes } from "../profiles/routes.ts";
import { shopPolicyRoutes } from "../shop-policy/routes.ts";
import { woodRoutes } from "../woods/routes.ts";

/** What is computed, and what it is judged by. */
export function planningRooms(app: App, doors: Doors): void {
  outlineRoutes(app, doors);
  woodRoutes(app);
  policyRoutes(app, doors);
  shopPolicyRoutes(app, doors);
  planRoutes(app, doors, admission());
  panelRoutes(app, doors);
  jointRoutes(app, doors);
  profileRoutes(app, doors, admission());
}
