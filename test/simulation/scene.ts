import { PANEL_BIT, TABLE_ROUTER } from "../contract/shop.ts";
import { approvalFrom, type Model, type ModelApproval } from "./model.ts";
import { type Actor, PEOPLE, PERSONS, type Person, PROGRAM } from "./people.ts";

/** What is there before anybody acts, by its ids. */
export type Scene = {
  readonly personIds: Readonly<Record<Person, string>>;
  readonly keys: Readonly<Record<Actor, string>>;
  readonly courseIds: readonly string[];
  readonly plans: readonly {
    readonly id: string;
    readonly bitId: string;
    readonly routerId: string;
    readonly request: object;
  }[];
};

// biome-ignore lint/suspicious/noExplicitAny: whoever sends it has looked at the status.
type Post = (url: string, body: object, key?: string) => Promise<any>;

export const WOOD_ID = "black-cherry";

/** Nothing is marked on it: what is entered later decides. */
const { markedMaxRpm: _, ...BIT } = PANEL_BIT;

const BITS = ["near", "far", "spare", "old", "new"].map((which) => `Raised panel, ${which}`);
const ROUTERS = ["Table router, near", "Table router, far"];
const TEACHERS: readonly Person[] = ["ann", "ben"];
const TERM_MS = 90 * 24 * 60 * 60 * 1000;
const COURSES = ["First year", "Evening class"];

/** Furnishes a new shop: people with keys, courses, bits, routers, and a plan for each of them together. */
export async function furnish(post: Post, nowMs: number): Promise<{ scene: Scene; model: Model }> {
  const people = await Promise.all(
    PERSONS.map(async (name): Promise<[Person, string, string]> => {
      const person = await post("/v1/people", { name, role: PEOPLE[name].role });
      return [name, person.id, (await post("/v1/keys", { name: "Own", personId: person.id })).key];
    }),
  );
  const program = await post("/v1/keys", { name: "Kiosk", role: "instructor" });
  const personIds = named(people.map(([name, id]) => [name, id]));
  const courseIds: string[] = [];
  const enrolled = new Map<string, string>();
  for (const [index, name] of COURSES.entries()) {
    const { id } = await post("/v1/courses", { name, policy: {}, requirements: {}, isTwoPerson: false });
    courseIds.push(id);
    for (const person of PERSONS) {
      const { teaches, learns } = PEOPLE[person];
      const part = teaches === index ? "instructor" : learns === index ? "student" : undefined;
      if (part === undefined) continue;
      const enrolment = await post(`/v1/courses/${id}/enrolments`, { personId: personIds[person], part });
      if (part === "student") enrolled.set(`${id} ${personIds[person]}`, enrolment.id);
    }
  }
  const bits = [];
  for (const name of BITS) bits.push(await post("/v1/bits", { ...BIT, name }));
  const plans = [];
  for (const name of ROUTERS) {
    const router = await post("/v1/routers", { ...TABLE_ROUTER, name });
    for (const bit of bits) {
      const request = {
        bit: { id: bit.id },
        router: { id: router.id },
        mounting: "table",
        woodId: WOOD_ID,
        cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
      };
      plans.push({
        id: (await post("/v1/plans", request)).id,
        ...{ bitId: bit.id, routerId: router.id, request },
      });
    }
  }
  const approvals: ModelApproval[] = [];
  for (const [course, teacher] of TEACHERS.entries()) {
    const key = people.find(([name]) => name === teacher)?.[2];
    for (const plan of plans.slice(course, course + 2)) {
      const validUntil = new Date(nowMs + TERM_MS).toISOString();
      const about = { name: "Panels", courseId: courseIds[course], planId: plan.id, supervision: "beside" };
      const draft = await post("/v1/approvals", { ...about, validUntil }, key);
      const isIssued = plan === plans[course];
      const approval = isIssued ? await post(`/v1/approvals/${draft.id}/issue`, {}, key) : draft;
      approvals.push(approvalFrom(approval, plan, 0));
    }
  }
  const keys = { ...named(people.map(([name, , key]) => [name, key])), [PROGRAM]: program.key };
  const modelBits = bits.map(({ id, version, massG }, index) => ({
    ...{
      id,
      number: index + 1,
      version,
      massG,
      loanId: undefined,
      hold: undefined,
      isRetired: false,
      inspections: [],
      changes: 0,
    },
  }));
  return {
    scene: { personIds, keys, courseIds, plans },
    model: { nowMs, bits: modelBits, loans: [], approvals, enrolled },
  };
}

function named(entries: readonly [Person, string][]): Record<Person, string> {
  const of = (person: Person) => entries.find(([name]) => name === person)?.[1] ?? "";
  return { head: of("head"), ann: of("ann"), ben: of("ben"), cat: of("cat"), dan: of("dan"), mel: of("mel") };
}
