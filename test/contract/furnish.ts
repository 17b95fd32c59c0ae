import { PANEL_BIT, TABLE_ROUTER } from "./shop.ts";

/** A bit of the invented shop that only a job wants. */
const DADO_BIT = {
  setName: "Shelf dadoes",
  name: "Up-cut, 12 mm",
  form: { kind: "spiral-up-cut", diameterMm: 12, cuttingLengthMm: 30 },
  shankDiameterMm: 12.7,
  wings: 2,
  toothMaterial: "solid-carbide",
};

/** Creates something and answers with it; `key` is another one than the manager's. */
// biome-ignore lint/suspicious/noExplicitAny: whoever sends the request has checked the answer.
export type Post = (path: string, body: object, key?: string) => Promise<any>;

/** One of everything a shop may hold. */
export type Furnished = {
  /** An id for every path parameter of the API description. */
  readonly ids: Readonly<Record<string, string>>;
  /** Keys of people in every role; the member and the student learn in the course. */
  readonly keys: {
    readonly manager: string;
    readonly instructor: string;
    readonly member: string;
    readonly student: string;
  };
};

/** One dark pixel. */
export const PHOTOGRAPH = {
  mediaType: "image/png",
  base64: "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
};

const IN_A_MONTH_MS = 30 * 24 * 60 * 60 * 1000;

/** Furnishes a new shop with one of everything; the approved setting is valid until then. */
export async function furnish(post: Post, validUntil = inAMonth()): Promise<Furnished> {
  const { ids: people, keys } = await furnishPeople(post);
  const place = await post("/v1/places", { name: "Drawer 3", kind: "drawer" });
  const { markedMaxRpm: _, ...unmarked } = PANEL_BIT;
  const bit = await post("/v1/bits", { ...unmarked, homePlaceId: place.id });
  const router = await post("/v1/routers", TABLE_ROUTER);
  const pair = { bitId: bit.id, routerId: router.id };
  const photograph = await post(`/v1/bits/${bit.id}/photographs`, PHOTOGRAPH);
  const learned = await furnishLearned(post, pair, keys.member);
  const plan = await post("/v1/plans", {
    ...{ bit: { id: bit.id }, router: { id: router.id }, mounting: "table", woodId: "black-cherry" },
    cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
  });
  const course = await furnishCourse(
    post,
    { ...pair, ...people, planId: plan.id, validUntil },
    keys.instructor,
  );
  const jobs = await furnishJobs(post, router.id, people.personId);
  const checkpoint = await post("/v1/events/checkpoints", {});
  return {
    ids: {
      ...pair,
      ...learned,
      ...people,
      ...course,
      ...jobs,
      placeId: place.id,
      planId: plan.id,
      photographId: photograph.id,
      woodId: "black-cherry",
      // A file is no furniture: nobody has imported any.
      importId: "import_0",
      checkpointId: checkpoint.id,
      signingKeyId: checkpoint.signingKeyId,
    },
    keys,
  };
}

async function furnishPeople(post: Post) {
  const person = async (role: string) => (await post("/v1/people", { name: `A ${role}`, role })).id;
  const [manager, instructor, member, student] = [
    await person("manager"),
    await person("instructor"),
    await person("member"),
    await person("student"),
  ];
  const key = (personId: string) => post("/v1/keys", { name: "Own", personId });
  const leaver = await person("member");
  const spare = await post("/v1/keys", { name: "Screen", role: "manager", scopes: ["keys:manage"] });
  return {
    ids: {
      ...{ personId: member, studentId: student, leaverId: leaver },
      ...{ instructorId: instructor, managerId: manager, keyId: spare.id },
    },
    keys: {
      manager: (await key(manager)).key,
      instructor: (await key(instructor)).key,
      member: (await key(member)).key,
      student: (await key(student)).key,
    },
  };
}

async function furnishLearned(
  post: Post,
  pair: { readonly bitId: string; readonly routerId: string },
  memberKey: string,
) {
  const { bitId, routerId } = pair;
  const collet = await post("/v1/collets", { name: "1/2 in", routerId, diameterMm: 12.7, condition: "good" });
  const inspection = await post(`/v1/bits/${bitId}/inspections`, { findings: [], effect: "note" });
  const sharpening = await post(`/v1/bits/${bitId}/sharpenings`, { diameterMm: 88.8 });
  const trial = await post("/v1/speed-trials", { ...pair, mark: 1, outcome: "ran-free" });
  const reading = await post(`/v1/routers/${routerId}/dial-readings`, {
    ...{ mark: 1, rpm: 9800, instrument: "Optical tachometer" },
  });
  const runOut = await post("/v1/run-out-readings", {
    ...pair,
    runOutMm: 0.03,
    instrument: "Dial indicator",
  });
  const done = { ...pair, woodId: "black-cherry", metres: 4, minutes: 3, outcomes: ["fine"] };
  const withoutLoanReason = "It was in the table already.";
  const use = await post("/v1/uses", { ...done, withoutLoanReason }, memberKey);
  return {
    colletId: collet.id,
    inspectionId: inspection.id,
    sharpeningId: sharpening.id,
    speedTrialId: trial.id,
    dialReadingId: reading.id,
    runOutReadingId: runOut.id,
    useId: use.id,
  };
}

async function furnishCourse(post: Post, known: Readonly<Record<string, string>>, instructorKey: string) {
  const { personId, studentId, instructorId, planId, bitId, routerId, validUntil } = known;
  const course = await post("/v1/courses", {
    ...{ name: "First year", policy: {}, requirements: {}, isTwoPerson: false },
  });
  await post(`/v1/courses/${course.id}/enrolments`, { personId: instructorId, part: "instructor" });
  const enrolment = await post(`/v1/courses/${course.id}/enrolments`, { personId, part: "student" });
  await post(`/v1/courses/${course.id}/enrolments`, { personId: studentId, part: "student" });
  const qualification = await post("/v1/qualifications", { personId, kind: "demonstration" }, instructorKey);
  const draft = { name: "Panels", courseId: course.id, planId, supervision: "beside", validUntil };
  const approval = await post("/v1/approvals", draft, instructorKey);
  await post(`/v1/approvals/${approval.id}/issue`, {}, instructorKey);
  const loan = await post("/v1/loans", { bitId, personId });
  await post("/v1/checks", { personId, bitId, routerId, isRecorded: true }, instructorKey);
  return {
    courseId: course.id,
    enrolmentId: enrolment.id,
    qualificationId: qualification.id,
    approvalId: approval.id,
    loanId: loan.id,
  };
}

/** A step along an edge: 12 mm deep into the work, 9 mm from its front face. */
export const PROFILE = {
  name: "Step, 12 × 9",
  shape: {
    thicknessMm: 19,
    start: { xMm: 12, zMm: 0 },
    segments: [
      { kind: "line", xMm: 12, zMm: 9 },
      { kind: "line", xMm: 0, zMm: 9 },
    ],
  },
};

/** A job of one cut, with a bit that nobody has. */
export function jobFor(bitId: string, routerId: string) {
  const cut = { kind: "groove", depthMm: 6 };
  const shelf = { lengthMm: 600, widthMm: 200, thicknessMm: 19 };
  return {
    ...{ name: "Shelves", woodId: "black-cherry", machines: [{ routerId, mounting: "table" }] },
    ...{ startsOn: "2027-02-01", wantedOn: "2027-02-05" },
    parts: [
      {
        ...{ name: "Shelf", count: 4, ...shelf },
        cuts: [{ along: "face-across", positionMm: 100, wanted: { by: "bit", bitId, cut } }],
      },
    ],
  };
}

/** A job in draft, and another that is ready and keeps a bit. */
async function furnishJobs(post: Post, routerId: string, personId: string) {
  const dado = await post("/v1/bits", DADO_BIT);
  const job = await post("/v1/jobs", { ...jobFor(dado.id, routerId), personId });
  const other = await post("/v1/bits", DADO_BIT);
  const ready = await post("/v1/jobs", { ...jobFor(other.id, routerId), personId });
  await post(`/v1/jobs/${ready.id}/ready`, {});
  const profile = await post("/v1/profiles", PROFILE);
  return { dadoBitId: dado.id, jobId: job.id, readyJobId: ready.id, profileId: profile.id };
}

function inAMonth(): string {
  return new Date(Date.now() + IN_A_MONTH_MS).toISOString();
}
