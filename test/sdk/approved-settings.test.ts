import { execFileSync } from "node:child_process";
import { type Client, verifySheet } from "@rimwise/client";
import { expect, test } from "vitest";
import { PANEL_BIT, TABLE_ROUTER } from "../contract/shop.ts";
import { openShopWithClient } from "./shop-client.ts";

const DAY_MS = 24 * 60 * 60 * 1000;

/** A class of the invented shop: an instructor, a student, a bit, a router and a stored plan. */
async function openClass() {
  const { client: manager, clientWith } = await openShopWithClient();
  const teacher = await manager.people.create({ name: "Instructor of the first year", role: "instructor" });
  const student = await manager.people.create({ name: "Student at bench 3", role: "student" });
  const keyFor = async (personId: string) =>
    clientWith({ key: (await manager.keys.create({ name: "Own key", personId })).key });
  const course = await manager.courses.create({
    name: "Cabinetmaking, first year",
    policy: { speedMaxRpm: 16_000 },
    requirements: { safetyTest: { passPercent: 100 }, isDemonstrationNeeded: true },
    isTwoPerson: false,
  });
  await manager.enrolments.create(course.id, { personId: teacher.id, part: "instructor" });
  const instructor = await keyFor(teacher.id);
  await instructor.enrolments.create(course.id, { personId: student.id, part: "student" });
  const { markedMaxRpm: _, ...unmarked } = PANEL_BIT;
  const bit = await manager.bits.create({
    ...unmarked,
    form: { ...PANEL_BIT.form, kind: "panel-raising", face: "cove" },
  });
  const router = await manager.routers.create(TABLE_ROUTER);
  const plan = await instructor.plans.create({
    bit: { id: bit.id },
    router: { id: router.id },
    mounting: "table",
    woodId: "black-cherry",
    cut: {
      kind: "panel",
      thicknessMm: 19,
      edges: [
        { lengthMm: 310, grain: "end" },
        { lengthMm: 460, grain: "long" },
      ],
    },
  });
  return { manager, instructor, member: await keyFor(student.id), course, student, bit, router, plan };
}

async function qualify(instructor: Client, personId: string): Promise<void> {
  await instructor.qualifications.create({ personId, kind: "safety-test", scorePercent: 100 });
  await instructor.qualifications.create({ personId, kind: "demonstration" });
}

test("course, qualification, plan, issue, check, sharpening, refusal, re-issue, check; sheets checked offline before and after", async () => {
  const { instructor, member, course, student, bit, router, plan } = await openClass();
  const draft = await instructor.approvals.create({
    name: "Door panels in cherry",
    courseId: course.id,
    planId: plan.id,
    supervision: "in-the-room",
    validUntil: new Date(Date.now() + 90 * DAY_MS).toISOString(),
  });
  expect(draft.state).toBe("draft");
  const issued = await instructor.approvals.issue(draft.id);
  expect(issued.state).toBe("issued");
  const { mark: dialMark } = issued.setting;
  if (dialMark === null) throw new Error("the router has a dial");
  const asked = {
    personId: student.id,
    bitId: bit.id,
    routerId: router.id,
    mark: dialMark,
    woodId: "black-cherry",
  };

  const unqualified = await member.checks.ask(asked);
  expect(unqualified.isAllowed).toBe(false);
  expect(unqualified.reasons.map(({ code }) => code)).toEqual([
    "safety-test-missing",
    "demonstration-missing",
  ]);
  await qualify(instructor, student.id);
  const allowed = await member.checks.ask({ ...asked, isRecorded: true });
  expect(allowed).toMatchObject({
    isAllowed: true,
    reasons: [],
    approvalId: issued.id,
    supervision: "in-the-room",
  });
  expect(await member.courses.getStudentToday(course.id, student.id)).toMatchObject({
    missing: [],
    settings: [{ id: issued.id }],
  });

  // A second program with the public keys, a sheet and a list, and no connection to the service.
  const keys = await member.signing.getJsonWebKeySet();
  const { jws } = await member.approvals.sheet(issued.id);
  const statusBefore = (await member.approvals.status()).jws;
  const expected = { ...asked, mounting: "table" } as const;
  const before = await verifySheet(jws, { keys, status: statusBefore, expected });
  expect(before).toMatchObject({ isValid: true, sheet: { jti: issued.id, setting: { mark: dialMark } } });
  expect(verifiedElsewhere(jws, JSON.stringify(keys))).toBe(issued.id);

  await instructor.sharpenings.create(bit.id, { diameterMm: 88.4, massG: 337 });
  expect(await member.checks.ask(asked), "some grams less change nothing to set").toMatchObject({
    isAllowed: true,
  });
  await instructor.bits.update(bit.id, { markedMaxRpm: 11_000 }, { ifMatch: "*" });
  const refused = await member.checks.ask(asked);
  expect(refused.isAllowed).toBe(false);
  expect(refused.reasons.map(({ code }) => code)).toEqual(["approval-lapsed"]);
  expect(refused.reasons[0]?.text).toContain("The bit was changed.");
  const lapsed = await instructor.approvals.get(issued.id);
  expect(lapsed.state).toBe("lapsed");
  expect(lapsed.lapse).toMatchObject({
    cause: { event: "bit.changed", subjectId: bit.id, after: { markedMaxRpm: 11_000 } },
    before: { mark: dialMark },
  });
  const statusAfter = (await member.approvals.status()).jws;
  expect(await verifySheet(jws, { keys, status: statusAfter, expected })).toMatchObject({
    isValid: false,
    reasons: ["ended"],
  });
  await expect(member.approvals.sheet(issued.id)).rejects.toMatchObject({
    code: "invalid-state",
  });

  const { resultDigest, isSame } = await instructor.approvals.difference(issued.id);
  expect(isSame).toBe(false);
  if (resultDigest === null) throw new Error("it can still be run");
  const again = await instructor.approvals.reissue(issued.id, { resultDigest });
  expect(again).toMatchObject({ state: "issued", replacesId: issued.id });
  const mark = again.setting.mark;
  if (mark === null) throw new Error("the router has a dial");
  expect(await member.checks.ask({ ...asked, mark: mark })).toMatchObject({ isAllowed: true });
  const sheet = await member.approvals.sheet(again.id);
  const later = { keys, status: statusAfter };
  expect(await verifySheet(sheet.jws, { ...later, expected: { ...expected, mark: mark } })).toMatchObject({
    isValid: true,
  });
  // What was asked before the change is no longer what the sheet says.
  if (mark !== dialMark)
    expect(await verifySheet(sheet.jws, { ...later, expected })).toMatchObject({ reasons: ["other-mark"] });
});

/** The sheet's id as plain Node code reads it: signature by Node's own crypto, nothing of ours. */
function verifiedElsewhere(jws: string, keys: string): string {
  const script = `
    const { createPublicKey, verify } = require("node:crypto");
    const [jws, keys] = process.argv.slice(1);
    const [head, payload, signature] = jws.split(".");
    const read = (part) => JSON.parse(Buffer.from(part, "base64url"));
    const key = JSON.parse(keys).keys.find(({ kid }) => kid === read(head).kid);
    const isSigned = verify(null, Buffer.from(head + "." + payload), createPublicKey({ key, format: "jwk" }), Buffer.from(signature, "base64url"));
    process.stdout.write(isSigned ? read(payload).jti : "not signed");
  `;
  return execFileSync(process.execPath, ["--eval", script, jws, keys], { encoding: "utf8" });
}
