import { mountingTitle } from "@rimwise/domain";
import { type DaySetupDrawn, type DrawnUnits, PICTURES, type Scene } from "@rimwise/drawing";
import { visibleTo } from "../access/caller.ts";
import { bareBit } from "../bits/bare.ts";
import { calledWithNumber } from "../bits/called.ts";
import { bits } from "../bits/reads.ts";
import type { Admit } from "../http/admission.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { computeJob } from "../jobs/compute.ts";
import { requireDaysInOrder } from "../jobs/decide.ts";
import { jobs } from "../jobs/reads.ts";
import { NewJobSchema } from "../jobs/schema.ts";
import type { JobWork } from "../jobs/work-schema.ts";
import { routers } from "../routers/kind.ts";
import type { Question } from "../store/query.ts";
import { pictureRoute } from "./picture-route.ts";

export function jobPictureRoutes(app: App, doors: Doors, admit: Admit): void {
  pictureRoute(
    app,
    doors,
    {
      scope: "jobs:read",
      tag: "jobs",
      path: "/v1/jobs/:jobId/picture",
      operationId: "getJobPicture",
      summary: "A job's day: its set-ups in order, with bit, mark, height, parts and minutes",
      kinds: ["day"],
    },
    ({ params: { jobId }, query: { units }, request }) =>
      doors.answer(
        (function* () {
          const { name, work } = requireFound(jobs.kind, jobId, yield* visibleTo(request, jobs).find(jobId));
          return yield* dayScene(work, name, units);
        })(),
      ),
  );

  pictureRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "jobs",
      path: "/v1/jobs/picture",
      operationId: "drawJob",
      summary: "The same of a job that is computed and not kept",
      kinds: ["day"],
      body: NewJobSchema,
    },
    ({ body, query: { units }, turns, request, at }) =>
      admit(request, async () => {
        requireDaysInOrder(body);
        const work = await computeJob(body, { answer: doors.answer, turns, at });
        return doors.answer(dayScene(work, body.name, units));
      }),
  );
}

/** The day of a job as it is drawn. */
function* dayScene(work: JobWork, name: string, units: DrawnUnits): Question<Scene> {
  return PICTURES.day.draw({ name, units, setups: yield* daySetups(work) });
}

/** A job's set-ups in order; one whose bit is no longer on the rack is left out. */
export function* daySetups(work: JobWork): Question<DaySetupDrawn[]> {
  const setups: DaySetupDrawn[] = [];
  for (const setup of work.setups) {
    const bit = yield* bits.find(setup.bitId);
    if (bit === undefined) continue;
    const router = yield* routers.find(setup.routerId);
    const parts = [...new Set(setup.runs.map((run) => run.name))];
    setups.push({
      bit: bareBit(bit),
      bitName: yield* calledWithNumber(bit),
      station: `${router?.name ?? "router"}, ${mountingTitle(setup.mounting)}`,
      mark: setup.mark ?? undefined,
      rpm: setup.rpm,
      cutterMm: setup.cutterMm,
      fenceMm: setup.fenceMm ?? undefined,
      parts: setup.runs.reduce((sum, { pieces }) => sum + pieces, 0),
      cuts: parts.join(", "),
      changeMin: setup.changeMin,
      workMin: setup.cuttingMin + setup.handlingMin,
    });
  }
  return setups;
}
