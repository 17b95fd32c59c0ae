import { ENGINE_VERSION } from "@rimwise/domain";
import { approvalsJudgedAgain } from "../approvals/judge-again.ts";
import { approvalsHold } from "../approvals/rules.ts";
import { bitsFollowPolicy, everyBitRescheduled } from "../bits/follow-policy.ts";
import { INDEX_AND_ENGINE } from "../bits/index-version.ts";
import { bitColumns } from "../bits/query-columns.ts";
import { bitsWithoutWords } from "../bits/reads.ts";
import { reservationsHold } from "../jobs/rules.ts";
import { photographsAreFew } from "../photographs/rules.ts";
import { placesAreKept } from "../places/rules.ts";
import type { Shape } from "../store/store.ts";
import { holdsAreFew } from "../uses/holds.ts";
import { happened } from "./happened.ts";
import { KINDS } from "./kinds.ts";
import { touchedBy } from "./touched.ts";

/** What the store needs to know of the rooms: their kinds of records, and what must hold or follows in the transaction of a change. */
export const SHAPE: Shape = {
  kinds: KINDS,
  rules: [
    placesAreKept,
    photographsAreFew,
    holdsAreFew,
    reservationsHold,
    bitsFollowPolicy,
    approvalsHold({ touchedBy, happened }),
  ],
  completions: [bitsWithoutWords],
  computed: [bitColumns],
  derivations: [
    {
      name: "index",
      version: INDEX_AND_ENGINE,
      hasQueryColumns: true,
      again: ({ at }) => everyBitRescheduled(at),
    },
    { name: "engine", version: ENGINE_VERSION, hasQueryColumns: false, again: approvalsJudgedAgain },
  ],
};
