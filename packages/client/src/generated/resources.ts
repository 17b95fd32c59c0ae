// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Caller } from "../operation.ts";
import { type ApprovalsResource, approvalsOf } from "./approvals.ts";
import { type BackupsResource, backupsOf } from "./backups.ts";
import { type BitsResource, bitsOf } from "./bits.ts";
import { type CheckpointsResource, checkpointsOf } from "./checkpoints.ts";
import { type ChecksResource, checksOf } from "./checks.ts";
import { type ColletsResource, colletsOf } from "./collets.ts";
import { type CoursesResource, coursesOf } from "./courses.ts";
import { type DialReadingsResource, dialReadingsOf } from "./dial-readings.ts";
import { type EnrolmentsResource, enrolmentsOf } from "./enrolments.ts";
import { type EventsResource, eventsOf } from "./events.ts";
import { type HealthResource, healthOf } from "./health.ts";
import { type ImportsResource, importsOf } from "./imports.ts";
import { type InspectionsResource, inspectionsOf } from "./inspections.ts";
import { type JobsResource, jobsOf } from "./jobs.ts";
import { type JointsResource, jointsOf } from "./joints.ts";
import { type KeysResource, keysOf } from "./keys.ts";
import { type LoansResource, loansOf } from "./loans.ts";
import { type MeResource, meOf } from "./me.ts";
import { type OutlinesResource, outlinesOf } from "./outlines.ts";
import { type PanelsResource, panelsOf } from "./panels.ts";
import { type PeopleResource, peopleOf } from "./people.ts";
import { type PhotographsResource, photographsOf } from "./photographs.ts";
import { type PlacesResource, placesOf } from "./places.ts";
import { type PlansResource, plansOf } from "./plans.ts";
import { type PolicyResource, policyOf } from "./policy.ts";
import { type ProfilesResource, profilesOf } from "./profiles.ts";
import { type QualificationsResource, qualificationsOf } from "./qualifications.ts";
import { type ReservationsResource, reservationsOf } from "./reservations.ts";
import { type RoutersResource, routersOf } from "./routers.ts";
import { type RunOutReadingsResource, runOutReadingsOf } from "./run-out-readings.ts";
import { type SharpeningsResource, sharpeningsOf } from "./sharpenings.ts";
import { type SigningResource, signingOf } from "./signing.ts";
import { type SpeedTrialsResource, speedTrialsOf } from "./speed-trials.ts";
import { type StockResource, stockOf } from "./stock.ts";
import { type UsesResource, usesOf } from "./uses.ts";
import { type WoodsResource, woodsOf } from "./woods.ts";

/** What the service keeps and computes, a resource each. */
export interface Resources {
  /** Approved settings: issued, lapsing by themselves, signed. */
  readonly approvals: ApprovalsResource;

  /** Copies of the whole shop, in the service's backup folder. */
  readonly backups: BackupsResource;

  /** The rack of router bits. */
  readonly bits: BitsResource;

  /** Signed statements of how far the history reached. */
  readonly checkpoints: CheckpointsResource;

  /** May this person run this bit on this router at this mark, now? */
  readonly checks: ChecksResource;

  /** Routers' collets and their condition. */
  readonly collets: ColletsResource;

  /** Courses, and what a class sees of itself. */
  readonly courses: CoursesResource;

  /** Speeds read at the marks of dials. */
  readonly dialReadings: DialReadingsResource;

  /** Who teaches and who learns in a course. */
  readonly enrolments: EnrolmentsResource;

  /** Who changed what, when and why. */
  readonly events: EventsResource;

  /** For operators and their monitors. */
  readonly health: HealthResource;

  /** Files of bits that were taken in. */
  readonly imports: ImportsResource;

  /** What was found on bits, and what follows. */
  readonly inspections: InspectionsResource;

  /** From a list of parts to the bits, set-ups and hours of a day's work. */
  readonly jobs: JobsResource;

  /** Joints of two halves: settings, how they close, and templates. */
  readonly joints: JointsResource;

  /** Who may call, and what they may do. */
  readonly keys: KeysResource;

  /** Bits out and back. */
  readonly loans: LoansResource;

  /** Who one is here. */
  readonly me: MeResource;

  /** Outlines of bits from drawings. */
  readonly outlines: OutlinesResource;

  /** Panels for frames: the size to cut, how they fit through the year, their edges. */
  readonly panels: PanelsResource;

  /** Who uses the shop. */
  readonly people: PeopleResource;

  /** Photographs of bits. */
  readonly photographs: PhotographsResource;

  /** Where bits are kept, what is there and what is missing. */
  readonly places: PlacesResource;

  /** Plans for cuts: speed, dial mark, passes and order of work, every limit explained. */
  readonly plans: PlansResource;

  /** The thresholds plans are judged by. */
  readonly policy: PolicyResource;

  /** The shop's own profiles, and which bits make one. */
  readonly profiles: ProfilesResource;

  /** What people were tested on, showed and were allowed. */
  readonly qualifications: QualificationsResource;

  /** Bits that are kept for the days of a job. */
  readonly reservations: ReservationsResource;

  /** The shop's routers and their speed dials. */
  readonly routers: RoutersResource;

  /** Run-out of bits as clamped in routers. */
  readonly runOutReadings: RunOutReadingsResource;

  /** What bits measured before and after, and what is left of an edge. */
  readonly sharpenings: SharpeningsResource;

  /** The keys that the service's signatures are checked with. */
  readonly signing: SigningResource;

  /** What bits did at which speed, and the next speed to try. */
  readonly speedTrials: SpeedTrialsResource;

  /** What is due, most used, and to reorder. */
  readonly stock: StockResource;

  /** Work that was done, and what happened. */
  readonly uses: UsesResource;

  /** Woods and materials, with where each number comes from. */
  readonly woods: WoodsResource;
}

export function resourcesOf(caller: Caller): Resources {
  return {
    approvals: approvalsOf(caller),
    backups: backupsOf(caller),
    bits: bitsOf(caller),
    checkpoints: checkpointsOf(caller),
    checks: checksOf(caller),
    collets: colletsOf(caller),
    courses: coursesOf(caller),
    dialReadings: dialReadingsOf(caller),
    enrolments: enrolmentsOf(caller),
    events: eventsOf(caller),
    health: healthOf(caller),
    imports: importsOf(caller),
    inspections: inspectionsOf(caller),
    jobs: jobsOf(caller),
    joints: jointsOf(caller),
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
    profiles: profilesOf(caller),
    qualifications: qualificationsOf(caller),
    reservations: reservationsOf(caller),
    routers: routersOf(caller),
    runOutReadings: runOutReadingsOf(caller),
    sharpenings: sharpeningsOf(caller),
    signing: signingOf(caller),
    speedTrials: speedTrialsOf(caller),
    stock: stockOf(caller),
    uses: usesOf(caller),
    woods: woodsOf(caller),
  };
}
