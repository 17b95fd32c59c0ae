import {
  describeAssumption,
  describeFinding,
  describePrecaution,
  describeStep,
  type Plan,
  type SetIn,
  showIn,
} from "@rimwise/domain";

/** Every sentence of a plan, in the order in which it is read. */
export function sentencesOf(
  { findings, steps, precautions, assumptions }: Plan,
  units: SetIn = "metric",
): string[] {
  const show = showIn(units);
  return [
    ...findings.map((finding) => describeFinding(finding, show)),
    ...steps.map((step) => describeStep(step, show)),
    ...precautions.map((precaution) => describePrecaution(precaution, show)),
    ...assumptions.map((assumption) => describeAssumption(assumption, show)),
  ];
}

/** A plan as a card that a teacher could sign: what it is, the verdict, what to do, what to mind, what was assumed. */
export function cardOf(name: string, plan: Plan, units: SetIn): string {
  const show = showIn(units);
  const { verdict, guide, findings, steps, precautions, assumptions } = plan;
  return [
    `── ${name} ── ${verdict}${guide === undefined ? "" : `, guided by ${guide}`}`,
    ...findings.map((finding) => `   ! ${describeFinding(finding, show)}`),
    ...steps.map((step, index) => `   ${index + 1}. ${describeStep(step, show)}`),
    ...precautions.map((precaution) => `   - ${describePrecaution(precaution, show)}`),
    ...assumptions.map((assumption) => `   ? ${describeAssumption(assumption, show)}`),
  ].join("\n");
}
