import { approvalReads } from "../approvals/reads.ts";
import { bitReads } from "../bits/reads.ts";
import { checkpointReads } from "../checkpoints/reads.ts";
import { eventReads } from "../events/reads.ts";
import { keyReads } from "../keys/reads.ts";
import { loanReads } from "../loans/reads.ts";
import { photographReads } from "../photographs/reads.ts";
import { placeReads } from "../places/reads.ts";
import type { Sources } from "../plans/gather.ts";
import { learnedReads } from "../plans/learned.ts";
import { routerReads } from "../routers/reads.ts";
import { shopLayerQuery } from "../shop-policy/reads.ts";
import { stockReads } from "../stock/reads.ts";
import type { Database } from "../store/database.ts";
import { recordReads } from "../store/record-reads.ts";
import { woodReads } from "../woods/reads.ts";

export type AllReads = ReturnType<typeof allReads>;

/** The queries of every room, prepared once. */
export function allReads(database: Database) {
  return {
    approvals: approvalReads(database),
    bits: bitReads(database),
    checkpoints: checkpointReads(database),
    checks: recordReads(database, "check"),
    collets: recordReads(database, "collet"),
    courses: recordReads(database, "course"),
    dialReadings: recordReads(database, "dial-reading"),
    enrolments: recordReads(database, "enrolment"),
    events: eventReads(database),
    imports: recordReads(database, "import"),
    inspections: recordReads(database, "inspection"),
    keys: keyReads(database),
    learned: learnedReads(database),
    loans: loanReads(database),
    people: recordReads(database, "person"),
    photographs: photographReads(database),
    places: placeReads(database),
    plans: recordReads(database, "plan"),
    qualifications: recordReads(database, "qualification"),
    routers: routerReads(database),
    runOuts: recordReads(database, "run-out-reading"),
    sharpenings: recordReads(database, "sharpening"),
    shopLayer: shopLayerQuery(database),
    shopPolicies: recordReads(database, "shop-policy"),
    stock: stockReads(database),
    trials: recordReads(database, "speed-trial"),
    uses: recordReads(database, "use"),
    woods: woodReads(),
  };
}

/** Where plans find what they are computed from. */
export function planSources(
  { bits, routers, woods, learned, shopLayer }: AllReads,
  now: () => Date,
): Sources {
  return { bits, routers, woods, learned, shopPolicy: async () => shopLayer(), now };
}
