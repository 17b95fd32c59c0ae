// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Caller } from "../operation.ts";
import { approvalsOf } from "./approvals.ts";
import { backupsOf } from "./backups.ts";
import { bitsOf } from "./bits.ts";
import { checkpointsOf } from "./checkpoints.ts";
import { checksOf } from "./checks.ts";
import { colletsOf } from "./collets.ts";
import { coursesOf } from "./courses.ts";
import { enrolmentsOf } from "./enrolments.ts";
import { eventsOf } from "./events.ts";
import { healthOf } from "./health.ts";
import { importsOf } from "./imports.ts";
import { inspectionsOf } from "./inspections.ts";
import { keysOf } from "./keys.ts";
import { loansOf } from "./loans.ts";
import { meOf } from "./me.ts";
import { outlinesOf } from "./outlines.ts";
import { panelsOf } from "./panels.ts";
import { peopleOf } from "./people.ts";
import { photographsOf } from "./photographs.ts";
import { placesOf } from "./places.ts";
import { plansOf } from "./plans.ts";
import { policyOf } from "./policy.ts";
import { qualificationsOf } from "./qualifications.ts";
import { readingsOf } from "./readings.ts";
import { routersOf } from "./routers.ts";
import { runOutsOf } from "./run-outs.ts";
import { sharpeningsOf } from "./sharpenings.ts";
import { signingOf } from "./signing.ts";
import { stockOf } from "./stock.ts";
import { trialsOf } from "./trials.ts";
import { usesOf } from "./uses.ts";
import { woodsOf } from "./woods.ts";

export function resourcesOf(caller: Caller) {
  return {
    approvals: approvalsOf(caller),
    backups: backupsOf(caller),
    bits: bitsOf(caller),
    checkpoints: checkpointsOf(caller),
    checks: checksOf(caller),
    collets: colletsOf(caller),
    courses: coursesOf(caller),
    enrolments: enrolmentsOf(caller),
    events: eventsOf(caller),
    health: healthOf(caller),
    imports: importsOf(caller),
    inspections: inspectionsOf(caller),
    keys: keysOf(caller),
    loans: loansOf(caller),
    me: meOf(caller),
    outlines: outlinesOf(caller),
    panels: panelsOf(caller),
    people: peopleOf(caller),
    photographs: photographsOf(caller),
    places: placesOf(caller),
    plans: plansOf(caller),
    policy: policyOf(caller),
    qualifications: qualificationsOf(caller),
    readings: readingsOf(caller),
    routers: routersOf(caller),
    runOuts: runOutsOf(caller),
    sharpenings: sharpeningsOf(caller),
    signing: signingOf(caller),
    stock: stockOf(caller),
    trials: trialsOf(caller),
    uses: usesOf(caller),
    woods: woodsOf(caller),
  };
}
