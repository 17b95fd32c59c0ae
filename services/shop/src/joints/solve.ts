import {
  ADVICE,
  type Bit,
  correctedJoint,
  describeHalfMeasures,
  describeJointFinding,
  describeTemplateFinding,
  jointDefinition,
  pairFindings,
  roundTo,
  type SolvedHalf,
  type SolvedJoint,
  showIn,
  solveJoint,
  templateFit,
} from "@rimwise/domain";
import { bareBit } from "../bits/bare.ts";
import { bits } from "../bits/reads.ts";
import { requireUsable } from "../bits/standing.ts";
import { withoutUndefined } from "../http/given.ts";
import { requireOne } from "../http/named-records.ts";
import { DECIMALS } from "../plans/rounding.ts";
import { pointedBy } from "../problems/from-error.ts";
import type { Question } from "../store/query.ts";
import type { JointRequest, SolvedJointShown, TemplateFitShown, TemplateRequest } from "./schema.ts";

/** The domain's pointers to the halves, as the request names them. */
const HALVES = [
  [/^\/0(?=\/|$)/, "/first"],
  [/^\/1(?=\/|$)/, "/second"],
] as const;

/** The settings of a joint's halves, put right by what was measured if anything was. Throws a problem that names what cannot be. */
export function* solvedJoint(request: JointRequest): Question<SolvedJointShown> {
  const { solved, pair } = yield* jointAsked(request);
  return shownJoint(request, solved, pair);
}

/** The same as the domain has it, with the two bits. */
export function* jointAsked(
  request: JointRequest,
): Question<{ readonly solved: SolvedJoint; readonly pair: readonly [Bit, Bit] }> {
  const { joint, measured, thicknessMm, otherThicknessMm, clearanceMm, depthMm } = request;
  const first = yield* bitOf(request.first, "/first");
  const second = yield* bitOf(request.second, "/second");
  const asked = withoutUndefined({ thicknessMm, otherThicknessMm, clearanceMm, depthMm });
  const unmeasured = answered("", () => solveJoint(joint, [first, second], asked));
  const solved =
    measured === undefined
      ? unmeasured
      : answered("/measured", () =>
          correctedJoint(
            joint,
            [unmeasured.first, unmeasured.second],
            withoutUndefined(measured),
            clearanceMm,
          ),
        );
  return { solved, pair: [first, second] };
}

/** What a bit cuts along a template. Throws a problem for sizes that nothing has. */
export function fittedTemplate({ runsBy, runsDiameterMm, ...asked }: TemplateRequest): TemplateFitShown {
  const { bitDiameterMm, line, insideRadiusMm } = asked;
  const runs = { by: runsBy, diameterMm: runsDiameterMm };
  const fit = answered("", () =>
    templateFit({ bitDiameterMm, runs, line, ...(insideRadiusMm !== undefined && { insideRadiusMm }) }),
  );
  const orNull = (lengthMm: number | undefined) => (lengthMm === undefined ? null : mm(lengthMm));
  return {
    offsetMm: mm(fit.offsetMm),
    leastInsideRadiusMm: mm(fit.leastInsideRadiusMm),
    leastTemplateRadiusMm: mm(fit.leastTemplateRadiusMm),
    templateRadiusMm: orNull(fit.templateRadiusMm),
    otherBushingDiameterMm: orNull(fit.otherBushingDiameterMm),
    findings: fit.findings.map((finding) => ({
      code: finding.code,
      severity: finding.severity,
      text: describeTemplateFinding(finding, showIn("both")),
    })),
  };
}

function shownJoint(
  { joint, measured }: JointRequest,
  solved: SolvedJoint,
  pair: readonly [Bit, Bit],
): SolvedJointShown {
  const { first, second, closure } = solved;
  const isOneBit =
    jointDefinition(joint).halves[0].forms.join() === jointDefinition(joint).halves[1].forms.join();
  const apart = isOneBit ? [] : pairFindings(...pair).filter(({ severity }) => severity === "care");
  return {
    joint,
    first: shownHalf(first),
    second: shownHalf(second),
    gap: placed(closure.gap),
    overlap: placed(closure.overlap),
    facesOffMm: mm(closure.facesOffMm),
    endsOffMm: closure.endsOffMm === undefined ? null : mm(closure.endsOffMm),
    findings: [...solved.findings, ...apart].map((finding) => ({
      code: finding.code,
      severity: finding.severity,
      text: describeJointFinding(finding, showIn("both")),
    })),
    isCorrected: measured !== undefined,
    advice: ADVICE,
  };
}

function shownHalf({ name, cut, measures }: SolvedHalf): SolvedJointShown["first"] {
  const figures = Object.entries(cut).map(([field, value]) => [
    field,
    typeof value === "number" ? mm(value) : value,
  ]);
  return {
    name,
    cut: { ...cut, ...Object.fromEntries(figures) },
    measures: describeHalfMeasures(measures, showIn("both")),
  };
}

function placed({ mm: byMm, xMm, zMm }: { readonly mm: number; readonly xMm: number; readonly zMm: number }) {
  return { mm: mm(byMm), xMm: mm(xMm), zMm: mm(zMm) };
}

function* bitOf(given: JointRequest["first"], pointer: string): Question<Bit> {
  if (!("id" in given)) return given;
  const record = yield* requireOne(`${pointer}/id`, given.id, bits);
  requireUsable(record);
  return bareBit(record);
}

/** What the domain answers, its faults as the request's. */
function answered<Answer>(under: string, ask: () => Answer): Answer {
  return pointedBy(
    (pointer) => `${under}${HALVES.reduce((text, [from, to]) => text.replace(from, to), pointer)}`,
    ask,
  );
}

function mm(lengthMm: number): number {
  return roundTo(lengthMm, DECIMALS.mm);
}
