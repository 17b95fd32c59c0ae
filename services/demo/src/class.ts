import { type CheckAnswer, type Client, verifySheet } from "@rimwise/client";
import type { Stage } from "./crib.ts";
import { speedOf } from "./speed.ts";

const TERM_MS = 90 * 24 * 60 * 60 * 1000;

/**
 * A class relies on a setting: an instructor issues it, a student qualifies and may run it, the bit shakes in a speed trial and the
 * setting lapses by itself, it is issued again; another program checks the signed sheet without the service. Gives the lines to show.
 */
export async function classAtWork(
  client: Client,
  clientWith: (key: string) => Client,
  { bitId, routerId, rest }: Stage,
): Promise<string[]> {
  const teacher = await client.people.create({ name: "Instructor of the first year", role: "instructor" });
  const student = await client.people.create({ name: "Student at bench 3", role: "student" });
  const course = await client.courses.create({
    name: "Cabinetmaking, first year",
    policy: { rimSpeedMaxMPerS: 52 },
    requirements: { safetyTest: { passPercent: 100 }, isDemonstrationNeeded: true },
    isTwoPerson: false,
  });
  await client.enrolments.create(course.id, { personId: teacher.id, part: "instructor" });
  await client.enrolments.create(course.id, { personId: student.id, part: "student" });
  const { key } = await client.keys.create({ name: "Instructor's own", personId: teacher.id });
  const instructor = clientWith(key);

  const plan = await instructor.plans.create({ bit: { id: bitId }, router: { id: routerId }, ...rest });
  const draft = await instructor.approvals.create({
    name: "Door panels in cherry",
    courseId: course.id,
    planId: plan.id,
    supervision: "in-the-room",
    validUntil: new Date(Date.now() + TERM_MS).toISOString(),
  });
  const issued = await instructor.approvals.issue(draft.id);
  const ask = (mark: number | string | null) =>
    client.checks.ask({
      personId: student.id,
      bitId,
      routerId,
      ...(mark !== null && { mark }),
      isRecorded: true,
    });
  const mark = issued.setting.mark;
  const lines = [
    `"${course.name}" holds the rim to 52 m/s; "${issued.name}" is issued: ${speedOf(issued.setting)}, until ${issued.validUntil.slice(0, 10)}.`,
    `May ${student.name} run it? ${answer(await ask(mark))}`,
  ];
  await instructor.qualifications.create({ personId: student.id, kind: "safety-test", scorePercent: 100 });
  await instructor.qualifications.create({ personId: student.id, kind: "demonstration" });
  lines.push(`After the test and the demonstration: ${answer(await ask(mark))}`);

  const keys = await client.signing.getJsonWebKeySet();
  const { jws } = await instructor.approvals.sheet(issued.id);
  const verify = async () => {
    const status = (await client.approvals.status()).jws;
    const { mounting, woodId } = rest;
    const expected = { bitId, routerId, mark, woodId, mounting };
    const { isValid, reasons } = await verifySheet(jws, { keys, status, expected });
    return isValid ? "good" : `not good (${reasons.join(", ")})`;
  };
  lines.push(`The signed sheet (${jws.length} characters), checked without the service: ${await verify()}.`);

  await instructor.sharpenings.create(bitId, { diameterMm: 88.3, massG: 336 });
  lines.push(
    `The bit comes back from sharpening, 0.6 mm smaller: the setting is the same. May the student run it? ${answer(await ask(mark))}`,
  );
  if (mark === null) return [...lines, "The router has no dial to try another speed at."];
  await instructor.speedTrials.create({ bitId, routerId, mark, outcome: "shook" });
  lines.push(`In a speed trial at that mark it shakes. May the student run it? ${answer(await ask(mark))}`);
  lines.push(`The sheet in somebody's pocket is ${await verify()}.`);
  const difference = await instructor.approvals.difference(issued.id);
  if (difference.after === null || difference.resultDigest === null)
    return [...lines, "It cannot be issued again."];
  const again = await instructor.approvals.reissue(issued.id, { resultDigest: difference.resultDigest });
  lines.push(
    "The instructor looks at the difference:",
    ...difference.inWords.map((sentence) => `  ${sentence}`),
    `and issues it again: ${answer(await ask(again.setting.mark))}`,
  );
  return lines;
}

function answer({ isAllowed, reasons, supervision }: CheckAnswer): string {
  return isAllowed
    ? `yes, with somebody ${supervision?.replaceAll("-", " ")}.`
    : `no. ${reasons.map(({ text }) => text).join(" ")}`;
}
