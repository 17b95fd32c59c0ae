import { describePrecaution, showIn } from "@rimwise/domain";
import { type DayPrinted, dayCard, daySheet } from "@rimwise/drawing";
import { visibleTo } from "../access/caller.ts";
import { calledWithNumber } from "../bits/called.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import type { Turns } from "../http/turns.ts";
import type { JobGroundChange } from "../jobs/act-schema.ts";
import { groundsChanged } from "../jobs/grounds.ts";
import { jobs } from "../jobs/reads.ts";
import type { JobRecord } from "../jobs/schema.ts";
import type { JobBitShown } from "../jobs/work-schema.ts";
import { daySetups } from "../pictures/jobs.ts";
import { plannedFor } from "../pictures/plans.ts";
import { places } from "../places/reads.ts";
import { Problem } from "../problems/problem.ts";
import type { Question } from "../store/query.ts";
import type { PrintQuery } from "./print-query.ts";
import { printRoute } from "./print-route.ts";

export function jobPrintRoutes(app: App, doors: Doors): void {
  printRoute(
    app,
    doors,
    {
      scope: "jobs:read",
      tag: "jobs",
      path: "/v1/jobs/:jobId/printout",
      operationId: "getJobPrintout",
      summary:
        "A job's day on paper: what to fetch and its set-ups; refused once it would be computed otherwise",
      usualPaper: "a4",
    },
    async ({ params: { jobId }, query, request, at, turns }) => {
      const job = await doors.answer(
        (function* () {
          const found = requireFound(jobs.kind, jobId, yield* visibleTo(request, jobs).find(jobId));
          requireUnchanged(found, yield* groundsChanged(found, at));
          return found;
        })(),
      );
      const cautions = await cautionsOf(job, at, query, doors, turns);
      const day = await doors.answer(dayOf(job, cautions));
      const { units, paper } = query;
      return {
        pages: () => daySheet({ ...day, units, paper }),
        card: () => dayCard({ ...day, units }),
      };
    },
  );
}

type Day = Omit<DayPrinted, "units" | "paper">;

/** That a bit is at another place does not change what it is set to. */
function requireUnchanged({ id }: JobRecord, changed: readonly JobGroundChange[]): void {
  const [first] = changed.filter(({ code }) => code !== "bit-elsewhere");
  if (first !== undefined)
    throw new Problem(
      "result-changed",
      `What job ${id} was computed from has changed since: ${first.text} Compute it again.`,
    );
}

/** What a careful teacher says of the cuts, each sentence once. */
async function cautionsOf(
  { work }: JobRecord,
  at: string,
  { units }: PrintQuery,
  doors: Doors,
  turns: Turns,
): Promise<string[]> {
  const show = showIn(units);
  const said = new Set<string>();
  for (const { request } of work.cuts) {
    if (request === null) continue;
    const { plan } = await doors.answer(plannedFor(request, at));
    for (const each of plan.precautions) said.add(describePrecaution(each, show));
    await turns();
  }
  return [...said];
}

function* dayOf({ id, name, work }: JobRecord, cautions: readonly string[]): Question<Day> {
  const fetch: Day["fetch"][number][] = [];
  for (const bit of work.bits) {
    const called = yield* calledWithNumber({ id: bit.bitId, name: bit.name });
    fetch.push({ name: called, where: yield* whereIs(bit) });
  }
  return {
    name,
    verdict: work.verdict,
    findings: work.findings.map(({ text }) => text),
    cautions,
    fetch,
    setups: yield* daySetups(work),
    madeFrom: `${id}, by engine ${work.engineVersion}`,
  };
}

/** Where a bit was last seen and where it belongs, from the inside outward. */
function* whereIs({ placeId, homePlaceId, state }: JobBitShown): Question<string> {
  const seen = placeId === null ? undefined : yield* named(placeId);
  const home = homePlaceId === null ? undefined : yield* named(homePlaceId);
  const where = seen ?? home;
  const stands = state === "in-rack" ? [] : [state.replaceAll("-", " ")];
  const back = seen === undefined || seen === home || home === undefined ? [] : [`back to ${home}`];
  return [where ?? "no place is known", ...stands, ...back].join("; ");
}

function* named(placeId: string): Question<string> {
  return (yield* places.outward(placeId)).map(({ name }) => name).join(", ");
}
