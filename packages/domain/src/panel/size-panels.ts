import type { Bit } from "../bit/bit.ts";
import { formOutline } from "../bit/form/registry.ts";
import { cutFaults } from "../cut/faults.ts";
import { type CutSetup, cutSetup } from "../cut/setup.ts";
import { DomainError, type Fault } from "../quantity/fault.ts";
import { CAUTIOUS_SAWN, type PanelAssumption, panelAssumptions } from "./assumptions.ts";
import { type PanelEdge, type PanelTotals, panelEdges, panelTotals } from "./edges.ts";
import { panelFaults } from "./faults.ts";
import type { ClimateFinding } from "./findings.ts";
import type { PanelsInput } from "./panel.ts";
import {
  engagementOf,
  type PanelContext,
  type PanelDimensions,
  panelDimensions,
  type SizedPanel,
  sizedPanel,
} from "./size-panel.ts";
import { heightForGrooveMm, type Raising } from "./tongue.ts";
import { type MoistureSpan, widened, yearMoisture } from "./year-moisture.ts";
import { panelMovement } from "./year-movement.ts";

/** Panels sized for their openings, in the order of the request. */
export type PanelSizing = {
  readonly panels: readonly SizedPanel[];
  readonly year: MoistureSpan;
  /** The setting of the bit the tongues come from; undefined if the panels stay flat. */
  readonly raising: { readonly heightMm: number; readonly fenceMm: number } | undefined;
  /** The edges of the panels that fit: what to cut. */
  readonly edges: readonly PanelEdge[];
  /** Of all the panels, whether they fit or not. */
  readonly totals: PanelTotals;
  readonly findings: readonly ClimateFinding[];
  readonly assumptions: readonly PanelAssumption[];
};

type FoundRaising = Raising & { readonly assumption: PanelAssumption | undefined };

/**
 * Panels for these openings: the largest sizes that never reach the bottom of their grooves in the wettest air, how much
 * of them stays covered in the driest, how their edges sit in the grooves, and what to cut. Moisture by Wood Handbook
 * eq. (4-5), movement by eq. (13-2) and (13-3). Throws a DomainError with every fault if there is no answer.
 * @example
 * const { panels } = sizePanels({
 *   openings: [{ widthMm: 300, heightMm: 500 }],
 *   groove: { depthMm: 10, widthMm: 6.35 },
 *   thicknessMm: 6,
 *   wood: woodById("mdf"),
 *   moisture: { percent: 8 },
 *   climate: {
 *     driest: { relativeHumidityPercent: 30, temperatureC: 21 },
 *     wettest: { relativeHumidityPercent: 60, temperatureC: 21 },
 *   },
 *   policy: DEFAULT_POLICY,
 * });
 * panels[0].width.cutMm // → 318.4
 */
export function sizePanels(input: PanelsInput): PanelSizing {
  const faults = panelFaults(input);
  if (faults.length > 0) throw new DomainError(faults);
  const { openings, wood, groove, thicknessMm, policy } = input;
  const year = yearMoisture(input.climate);
  const context = { groove, thicknessMm, movement: movementOf(input, year), policy };
  const sized = openings.map((opening) => ({ opening, dimensions: panelDimensions(context, opening) }));
  const found =
    input.bit &&
    raisingBy(
      input,
      input.bit,
      context,
      sized.map(({ dimensions }) => dimensions),
    );
  const panels = sized.map(({ opening, dimensions }) => sizedPanel(context, opening, dimensions, found));
  return {
    panels,
    year,
    raising: found && { heightMm: found.setting.heightMm, fenceMm: found.setting.fenceMm },
    edges: panelEdges(panels.filter(isPlanned), wood),
    totals: panelTotals(panels),
    findings: climateFindings(input, year),
    assumptions: panelAssumptions(input, found?.assumption),
  };
}

/** Whether the edges of a panel are cut: one that does not fit is not raised. */
export function isPlanned({ verdict }: SizedPanel): boolean {
  return verdict !== "does-not-fit";
}

function movementOf({ wood, sawn, moisture, policy }: PanelsInput, year: MoistureSpan) {
  const { percent, tolerancePercent = policy.moistureToleranceAssumedPercent } = moisture;
  return panelMovement({
    wood,
    sawn: sawn ?? CAUTIOUS_SAWN,
    now: { percent, tolerancePercent },
    year,
    spreadRatio: policy.movementSpreadRatio,
  });
}

/** The bit at the height asked for, or at the one that leaves a tongue the groove takes, or with its whole profile. */
function raisingBy(
  input: PanelsInput,
  bit: Bit,
  context: PanelContext,
  panels: readonly PanelDimensions[],
): FoundRaising {
  const outline = formOutline(bit.form);
  const whole = setupOf(input, bit, undefined);
  const deepestMm = Math.max(0, ...panels.map((panel) => engagementOf(panel).mostMm));
  const tongue = { ...context, movement: context.movement.thickness };
  const foundMm = heightForGrooveMm(tongue, outline, whole.fenceMm, deepestMm);
  if (input.heightMm !== undefined) {
    const setting = setupOf(input, bit, input.heightMm);
    const fittingHeightMm = foundMm === setting.heightMm ? undefined : foundMm;
    return { outline, setting, fittingHeightMm, assumption: undefined };
  }
  const setting = foundMm === undefined ? whole : setupOf(input, bit, foundMm);
  const { heightMm } = setting;
  const code = foundMm === undefined ? "raising-height-whole" : "raising-height-found";
  return { outline, setting, fittingHeightMm: undefined, assumption: { code, heightMm } };
}

function setupOf({ thicknessMm, fenceMm }: PanelsInput, bit: Bit, heightMm: number | undefined): CutSetup {
  // A setting does not depend on which edges are cut at it.
  const cut = {
    kind: "panel" as const,
    edges: [],
    thicknessMm,
    ...(heightMm === undefined ? {} : { heightMm }),
    ...(fenceMm === undefined ? {} : { fenceMm }),
  };
  const outOfRange = cutFaults(cut).filter(({ pointer }) => pointer !== "/edges");
  if (outOfRange.length > 0) throw new DomainError(outOfRange);
  try {
    return cutSetup(bit, formOutline(bit.form), cut);
  } catch (error) {
    if (error instanceof DomainError) throw new DomainError(error.faults.map(ofPanel));
    throw error;
  }
}

/** Nobody named the kind of cut here: what does not suit is the bit. */
function ofPanel(fault: Fault): Fault {
  return fault.pointer === "/kind" ? { ...fault, pointer: "/bit/form/kind" } : fault;
}

function climateFindings({ wood, moisture }: PanelsInput, year: MoistureSpan): ClimateFinding[] {
  const { driestPercent, wettestPercent } = widened(year);
  if (wood.kind !== "species") return [];
  if (moisture.percent >= driestPercent && moisture.percent <= wettestPercent) return [];
  const moisturePercent = moisture.percent;
  return [
    { code: "moisture-outside-year", severity: "care", moisturePercent, driestPercent, wettestPercent },
  ];
}
