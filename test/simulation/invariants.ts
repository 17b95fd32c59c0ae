import { seesLoan } from "./acts/lending.ts";
import { partOf } from "./acts/teaching.ts";
import { found, isInForce, isUsable, loanOf, type Model, type ModelApproval } from "./model.ts";
import { ACTORS, type Actor, isStaff, LEARNERS, type Person, PROGRAM } from "./people.ts";
import { sheetsHold } from "./sheets.ts";
import type { World } from "./world.ts";

/** A word that every bit of the scene is called by. */
const WORD_OF_ALL = "raised";

type Row = { readonly id: string };

/** Throws if anything is not as the model says, whoever looks. */
export async function hold(world: World, model: Model): Promise<void> {
  await settingsHold(world, model);
  await bitsAre(world, model);
  await sheetsHold(world, model);
  for (const actor of ACTORS) await seesWhatIsTheirs(world, model, actor);
  for (const person of LEARNERS) await isCheckedRightly(world, model, person);
  const proof = await world.ask({
    method: "POST",
    url: "/v1/events/verify",
    key: world.managerKey,
    body: {},
  });
  must(proof.body.isIntact === true, `the history is broken: ${JSON.stringify(proof.body)}`);
}

/** Takes over which settings lapsed; none may have that nothing was done to, and none may stay whose plan would differ. */
async function settingsHold(world: World, model: Model): Promise<void> {
  for (const approval of model.approvals) {
    const { id, planId, bitId, mark, rpm, validUntilMs } = approval;
    const { body } = await world.ask({ method: "GET", url: `/v1/approvals/${id}`, key: world.managerKey });
    const bit = found(model.bits, bitId);
    if (body.state === "lapsed" && approval.state === "issued" && bit.changes > approval.bitChanges)
      approval.state = "lapsed";
    const isOver = approval.state === "issued" && model.nowMs >= validUntilMs;
    must(
      body.state === (isOver ? "expired" : approval.state),
      `${id} is ${body.state}, not ${approval.state}`,
    );
    if (approval.state !== "issued" || isOver) continue;
    must(isUsable(bit), `${id} is in force for ${bitId}, which is out of use`);
    approval.bitChanges = bit.changes;
    const request = world.scene.plans.find((plan) => plan.id === planId)?.request ?? {};
    const { body: plan } = await world.ask({
      ...{ method: "POST", url: "/v1/plans/preview?fields=speed", key: world.managerKey, body: request },
    });
    must(
      plan.speed.mark === mark && plan.speed.rpm === rpm,
      `${id} says ${mark} (${rpm} rpm), its plan now ${plan.speed.mark} (${plan.speed.rpm} rpm)`,
    );
  }
}

async function bitsAre(world: World, model: Model): Promise<void> {
  const shown = await everyRow(world, "/v1/bits", world.managerKey);
  const state = (bit: Model["bits"][number]) => {
    if (bit.isRetired) return "retired";
    if (bit.hold !== undefined) return "held";
    return bit.loanId === undefined ? "in-rack" : "on-loan";
  };
  const expected = model.bits.map((bit) => [bit.id, bit.version, bit.massG, bit.loanId, state(bit)]);
  const is = shown.map((bit) => [bit.id, bit.version, bit.massG, bit.loanId, bit.state]);
  same(is, expected, "the rack");
  const worded = await everyRow(world, `/v1/bits?q=${WORD_OF_ALL}`, world.managerKey);
  same(ids(worded), ids(model.bits), `what "${WORD_OF_ALL}" finds`);
  for (const { id, number } of model.bits) {
    const numbered = await everyRow(world, `/v1/bits?number=${number}`, world.managerKey);
    same(ids(numbered), [id], `what the number ${number} finds`);
  }
  const out = model.loans.filter(({ isOut }) => isOut).map(({ bitId }) => bitId);
  must(new Set(out).size === out.length, "a bit is out twice");
}

/** Every list is complete, in pages of two, and holds only what its reader may see. */
async function seesWhatIsTheirs(world: World, model: Model, actor: Actor): Promise<void> {
  const key = world.scene.keys[actor];
  const loans = model.loans.filter(({ personId }) => seesLoan(actor, personId, world.scene));
  same(ids(await everyRow(world, "/v1/loans", key)), ids(loans), `the loans that ${actor} sees`);
  const approvals = model.approvals.filter((approval) => seesApproval(world, model, actor, approval));
  same(ids(await everyRow(world, "/v1/approvals", key)), ids(approvals), `the settings that ${actor} sees`);
}

function seesApproval(world: World, model: Model, actor: Actor, { courseId, state }: ModelApproval): boolean {
  if (actor === PROGRAM || isStaff(actor)) return true;
  const course = world.scene.courseIds.indexOf(courseId);
  return state !== "draft" && model.enrolled.has(partOf(world.scene, course, actor));
}

/** Somebody may run a bit exactly when the model says so; of a sheet the same. */
async function isCheckedRightly(world: World, model: Model, person: Person): Promise<void> {
  const { scene, managerKey } = world;
  const personId = scene.personIds[person];
  for (const { bitId, routerId, mark } of model.approvals) {
    const bit = found(model.bits, bitId);
    const loan = loanOf(model, bit);
    const isFree = isUsable(bit) && (loan === undefined || loan.personId === personId);
    const isApproved = model.approvals.some(
      (each) =>
        each.bitId === bitId &&
        each.routerId === routerId &&
        each.mark === mark &&
        isInForce(model, each) &&
        model.enrolled.has(`${each.courseId} ${personId}`),
    );
    const body = { personId, bitId, routerId, ...(mark !== null && { mark }) };
    const { body: check } = await world.ask({ method: "POST", url: "/v1/checks", key: managerKey, body });
    must(
      check.isAllowed === (isFree && isApproved),
      `whether ${person} may run ${bitId} is answered ${JSON.stringify(check)}; free ${isFree}, approved ${isApproved}`,
    );
  }
}

const PAGE = 2;

async function everyRow(world: World, path: string, key: string) {
  const rows = [];
  for (let cursor = ""; ; ) {
    const url = `${path}${path.includes("?") ? "&" : "?"}limit=${PAGE}${cursor === "" ? "" : `&cursor=${cursor}`}`;
    const { body, code } = await world.ask({ method: "GET", url, key });
    must(code === "done", `${path}: ${JSON.stringify(body)}`);
    rows.push(...body.data);
    if (body.nextCursor === null) return rows;
    cursor = body.nextCursor;
  }
}

function ids(rows: readonly Row[]): string[] {
  return rows.map(({ id }) => id).sort();
}

function same(is: unknown, should: unknown, what: string): void {
  must(
    JSON.stringify(is) === JSON.stringify(should),
    `${what}: ${JSON.stringify(is)}, not ${JSON.stringify(should)}`,
  );
}

function must(holds: boolean, message: string): void {
  if (!holds) throw new Error(message);
}
