// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Caller } from "../operation.ts";
import { bitsOf } from "./bits.ts";
import { eventsOf } from "./events.ts";
import { healthOf } from "./health.ts";
import { keysOf } from "./keys.ts";
import { outlinesOf } from "./outlines.ts";
import { panelsOf } from "./panels.ts";
import { plansOf } from "./plans.ts";
import { policyOf } from "./policy.ts";
import { routersOf } from "./routers.ts";
import { woodsOf } from "./woods.ts";

export function resourcesOf(caller: Caller) {
  return {
    bits: bitsOf(caller),
    events: eventsOf(caller),
    health: healthOf(caller),
    keys: keysOf(caller),
    outlines: outlinesOf(caller),
    panels: panelsOf(caller),
    plans: plansOf(caller),
    policy: policyOf(caller),
    routers: routersOf(caller),
    woods: woodsOf(caller),
  };
}
