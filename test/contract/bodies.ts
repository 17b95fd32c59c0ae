import { readFileSync } from "node:fs";
import { type Furnished, jobFor, PHOTOGRAPH, PROFILE } from "./furnish.ts";
import { PANEL_BIT, TABLE_ROUTER } from "./shop.ts";

type Ids = Furnished["ids"];
export type Method = "GET" | "POST" | "PUT" | "PATCH" | "DELETE";

/** One operation of the written API description. */
export type Operation = {
  readonly id: string;
  readonly method: Method;
  /** As documented, with its parameters in braces. */
  readonly path: string;
  readonly scope: string | undefined;
  /** The names of its query parameters. */
  readonly query: readonly string[];
  readonly isPublic: boolean;
  readonly takesJson: boolean;
  readonly bodySchema: object | undefined;
  readonly isEndless: boolean;
};

type Documented = {
  readonly operationId: string;
  readonly "x-scope"?: string;
  readonly parameters?: readonly { readonly name: string; readonly in: string }[];
  readonly security: readonly object[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: object }>> };
  readonly responses: Readonly<Record<string, { readonly content?: object }>>;
};

const written: { readonly paths: Readonly<Record<string, Readonly<Record<string, Documented>>>> } =
  JSON.parse(readFileSync(new URL("../../openapi/openapi.json", import.meta.url), "utf8"));

const METHODS: readonly Method[] = ["GET", "POST", "PUT", "PATCH", "DELETE"];

/** Every operation of openapi/openapi.json. */
export const OPERATIONS: readonly Operation[] = Object.entries(written.paths).flatMap(([path, methods]) =>
  METHODS.flatMap((method) => {
    const operation = methods[method.toLowerCase()];
    if (operation === undefined) return [];
    const body = operation.requestBody?.content["application/json"]?.schema;
    const answers = Object.values(operation.responses).flatMap(({ content = {} }) => Object.keys(content));
    return {
      id: operation.operationId,
      method,
      path,
      scope: operation["x-scope"],
      query: (operation.parameters ?? []).filter((each) => each.in === "query").map(({ name }) => name),
      isPublic: operation.security.length === 0,
      takesJson: body !== undefined,
      bodySchema: body,
      isEndless: answers.includes("text/event-stream"),
    };
  }),
);

/** An operation's path with ids of records that are kept, or of none. */
export function urlOf({ id, path }: Pick<Operation, "id" | "path">, ids: Ids): string {
  return path.replaceAll(/\{(\w+)\}/g, (_, name) => ids[parameterOf(id, name)] ?? unknownParameter(id, name));
}

/** The same operation for records that nobody has. */
export function unrealUrlOf({ path }: Pick<Operation, "path">): string {
  return path.replaceAll(/\{(\w+)\}/g, "none_0");
}

function parameterOf(operationId: string, name: string): string {
  if (operationId === "erasePerson") return "leaverId";
  return name;
}

function unknownParameter(operationId: string, name: string): never {
  throw new Error(`${operationId}: the furnished shop has no ${name}`);
}

/** A body that each operation would take, by the shop's furniture. An operation with a body and none here stops its tests. */
export function bodyOf({ id }: Pick<Operation, "id">, ids: Ids): Readonly<Record<string, unknown>> {
  const body = BODIES[id];
  if (body === undefined) throw new Error(`${id} has no example body`);
  return body(ids);
}

const reason = "Looked at by the bench lead.";
const { name: _bit, notes: _notes, ...BIT } = PANEL_BIT;
const { name: _router, ...ROUTER } = TABLE_ROUTER;
const CUT = { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] };
const PLAN = { bit: BIT, router: ROUTER, mounting: "table", woodId: "black-cherry", cut: CUT };
const pair = ({ bitId, routerId }: Ids) => ({ bitId, routerId });

/** Made for each half: two places of a body are two objects. */
const lockMitre = () => ({
  form: { kind: "lock-mitre", diameterMm: 69.9, cuttingLengthMm: 22, lockDepthMm: 2.5 },
  ...{ shankDiameterMm: 12.7, wings: 2 },
});
const panelsBody = () => ({
  ...{
    openings: [{ widthMm: 300, heightMm: 500 }],
    groove: { depthMm: 10, widthMm: 6.35 },
    thicknessMm: 19,
  },
  ...{ woodId: "black-cherry", moisture: { percent: 8, tolerancePercent: 1 } },
  climate: {
    driest: { relativeHumidityPercent: 30, temperatureC: 21 },
    wettest: { relativeHumidityPercent: 60, temperatureC: 21 },
  },
});
const jointBody = () => ({
  joint: "lock-mitre",
  ...{ first: lockMitre(), second: lockMitre(), thicknessMm: 18 },
});
const jobBody = ({ dadoBitId = "", routerId = "" }: Ids) => jobFor(dadoBitId, routerId);

const BODIES: Readonly<Record<string, (ids: Ids) => Readonly<Record<string, unknown>>>> = {
  createBit: () => PANEL_BIT,
  updateBit: () => ({ notes: "Left drawer." }),
  holdBit: () => ({ reason }),
  releaseBit: () => ({ reason }),
  retireBit: () => ({ reason }),
  createPhotograph: () => PHOTOGRAPH,
  createPlace: () => ({ name: "Drawer 4", kind: "drawer" }),
  updatePlace: () => ({ notes: "Left." }),
  takeStock: ({ bitId }) => ({ bitIds: [bitId] }),
  createLoan: ({ bitId, personId }) => ({ bitId, personId }),
  returnLoan: () => ({}),
  createInspection: () => ({ findings: [], effect: "note" }),
  createSharpening: () => ({ notes: "Edge only." }),
  createRouter: () => TABLE_ROUTER,
  updateRouter: () => ({ name: "Table router 2" }),
  createDialReading: () => ({ mark: 1, rpm: 9800, instrument: "Optical tachometer" }),
  createCollet: ({ routerId }) => ({ name: "1/4 in", routerId, diameterMm: 6.35, condition: "good" }),
  updateCollet: () => ({ notes: "Clean." }),
  createRunOutReading: (ids) => ({ ...pair(ids), runOutMm: 0.03, instrument: "Dial indicator" }),
  createSpeedTrial: (ids) => ({ ...pair(ids), mark: 1, outcome: "ran-free" }),
  setSpeedTrialAside: () => ({ reason: "A new bearing." }),
  createUse: (ids) => ({
    ...{ ...pair(ids), woodId: "black-cherry", metres: 1, minutes: 1, outcomes: ["fine"] },
    withoutLoanReason: "It was in the table already.",
  }),
  convertOutline: () => ({ path: "M 6.35 0 V -5 A 12.7 12.7 0 0 1 19.05 -17.7" }),
  setShopPolicy: () => ({ layer: {} }),
  previewPlan: () => PLAN,
  previewCorrection: () => ({ ...PLAN, measured: { depthMm: 12 } }),
  previewManyPlans: () => ({ requests: [PLAN] }),
  tabulatePlans: ({ bitId, routerId }) => ({
    ...{ bitIds: [bitId], routerIds: [routerId], woodIds: ["black-cherry"], mounting: "table" },
  }),
  createPlan: () => PLAN,
  correctPlan: () => ({ depthMm: 6 }),
  sizePanels: panelsBody,
  solveJoint: jointBody,
  fitTemplate: () => ({ bitDiameterMm: 12.7, runsBy: "bushing", runsDiameterMm: 19, line: "inside" }),
  searchProfile: () => ({ shape: PROFILE.shape }),
  drawBit: () => BIT,
  drawPlan: () => PLAN,
  printPlan: () => PLAN,
  drawPanel: panelsBody,
  drawJoint: jointBody,
  drawProfile: () => ({ shape: PROFILE.shape }),
  drawJob: jobBody,
  createProfile: () => PROFILE,
  updateProfile: () => ({ notes: "Of the shelves." }),
  logProfile: ({ dadoBitId }) => ({
    settings: [{ bitId: dadoBitId, heightMm: 9, fenceMm: -6, work: "flat", face: "front" }],
  }),
  previewJob: jobBody,
  createJob: jobBody,
  updateJob: () => ({ notes: "For the hall." }),
  endJob: () => ({ as: "dropped" }),
  finishJobSetup: () => ({ setupId: "setup_0", outcomes: ["fine"] }),
  draftJobApprovals: ({ courseId }) => ({
    ...{ courseId, supervision: "beside", validUntil: "2027-01-01T00:00:00Z" },
  }),
  createManyPlaces: () => ({ data: [{ name: "Drawer 5", kind: "drawer" }] }),
  createManyPeople: () => ({ data: [{ name: "Somebody else", role: "member" }] }),
  createPerson: () => ({ name: "Somebody new", role: "member" }),
  erasePerson: () => ({ reason }),
  updatePerson: () => ({ notes: "Tuesdays." }),
  createKey: () => ({ name: "Another", role: "manager", scopes: ["keys:manage"] }),
  rotateKey: () => ({}),
  createCourse: () => ({ name: "Second year", policy: {}, requirements: {}, isTwoPerson: false }),
  updateCourse: () => ({ notes: "Room 2." }),
  createEnrolment: ({ instructorId }) => ({ personId: instructorId, part: "student" }),
  createManyEnrolments: ({ instructorId }) => ({ data: [{ personId: instructorId, part: "student" }] }),
  createManyQualifications: ({ personId }) => ({ data: [{ personId, kind: "demonstration" }] }),
  createQualification: ({ personId }) => ({ personId, kind: "demonstration" }),
  withdrawQualification: () => ({ reason }),
  createApproval: ({ courseId, planId }) => ({
    ...{ name: "Panels", courseId, planId, supervision: "beside", validUntil: "2027-01-01T00:00:00Z" },
  }),
  reissueApproval: () => ({ resultDigest: `sha256:${"0".repeat(64)}` }),
  withdrawApproval: () => ({ reason }),
  askCheck: (ids) => ({ personId: ids["personId"], ...pair(ids) }),
  verifyEvents: () => ({ fromSequence: 1 }),
};
