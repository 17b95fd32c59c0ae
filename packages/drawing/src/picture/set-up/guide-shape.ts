import { formPilotRadiusMm } from "@rimwise/domain";
import { hatched } from "../../drafting/hatch.ts";
import type { Contour } from "../../scene/contour.ts";
import { path, worldRectangle } from "../../scene/path.ts";
import type { Item } from "../../scene/scene.ts";
import { leftEndMm, type Section, type SectionPlace } from "./layout.ts";

/** How far a fence stands out above the work, and how far down an edge guide reaches beside it, mm in the world. Ours, for drawing. */
const FENCE_PAST_MM = 5;
const EDGE_GUIDE_MM = 12;
/** Wall of a bushing, mm. From memory. */
const BUSHING_WALL_MM = 1;

/** Wood or board that is not the work. */
const TEMPLATE = { anglesDeg: [0], spacingMm: 0.8, line: "thin" as const };

/** What guides the cut, as far as the section shows it: dashed where it stands beyond the section. */
export function guideShape(section: Section, place: SectionPlace): Item[] {
  switch (section.plan.guide) {
    case "fence":
    case "fence-flush-with-bearing":
    case "sled":
      return [path({ of: "fence" }, fenceFrom(section, place, fenceFaceMm(section)), "dashed")];
    case "fence-with-offset-outfeed":
      return offsetHalves(section, place);
    case "edge-guide":
      return [
        path(
          { of: "edge-guide" },
          beside(section, place, fenceFaceMm(section), Math.min(EDGE_GUIDE_MM, section.sections.thicknessMm)),
          "dashed",
        ),
      ];
    case "template":
      return board("template", templateOnBearing(section, place));
    case "template-and-bushing":
      return bushed(section, place);
    default:
      return [];
  }
}

/** Where the face of a fence or edge guide lies; of a groove that is the edge of the work, which is anywhere: it is drawn at the work's end. */
function fenceFaceMm({ sections, workMm }: Section): number {
  return sections.sides === 1 ? 0 : workMm[0];
}

function fenceFrom(section: Section, place: SectionPlace, faceMm: number): Contour[] {
  return beside(section, place, faceMm, section.highMm + FENCE_PAST_MM / place.scale);
}

/** A box on the table or under the base, from the left end of the drawing to a face. */
function beside(section: Section, { frame }: SectionPlace, faceMm: number, highMm: number): Contour[] {
  const leftMm = Math.min(leftEndMm(section), faceMm - FENCE_PAST_MM);
  return worldRectangle(frame, [leftMm, section.planeMm], [faceMm, highMm]);
}

/** The infeed half, and the outfeed one that stands level with the bit's edge. */
function offsetHalves(section: Section, place: SectionPlace): Item[] {
  const { plan, standing } = section;
  const step = plan.steps.findLast((each) => each.code === "set-fence-halves");
  if (step === undefined) return [];
  return [
    path({ of: "infeed-fence" }, fenceFrom(section, place, standing.axisMm + step.infeedMm), "dashed"),
    path({ of: "outfeed-fence" }, fenceFrom(section, place, standing.axisMm + step.outfeedMm), "dashed"),
  ];
}

/** Its edge lies where the bearing runs. */
function templateOnBearing(section: Section, { frame }: SectionPlace): Contour[] {
  const { plan, input, standing, workMm, sections } = section;
  const step = plan.steps.find((each) => each.code === "fix-template");
  if (step === undefined) return [];
  const lineMm = standing.axisMm + (formPilotRadiusMm(input.bit.form) ?? 0);
  const [fromMm, toMm] =
    step.bearing === "shank"
      ? [section.planeMm, 0]
      : [sections.thicknessMm, sections.thicknessMm + step.templateThicknessMm];
  return worldRectangle(frame, [lineMm, fromMm], [workMm[1], toMm]);
}

/** The bushing around the bit, and the template it runs along: on the work of an edge, on the left of the way of a groove. */
function bushed(section: Section, { frame }: SectionPlace): Item[] {
  const { plan, standing, planeMm, workMm, sections } = section;
  const step = plan.steps.find((each) => each.code === "fix-bushing-template");
  if (step === undefined) return [];
  const { axisMm } = standing;
  const radiusMm = step.bushingDiameterMm / 2;
  const isOnWork = sections.sides === 1;
  const template = isOnWork
    ? worldRectangle(frame, [axisMm + radiusMm, planeMm], [Math.max(workMm[1], axisMm + radiusMm), 0])
    : worldRectangle(
        frame,
        [Math.min(leftEndMm(section), axisMm - radiusMm), planeMm],
        [axisMm - radiusMm, 0],
      );
  const walls = [-1, 1].flatMap((side) =>
    worldRectangle(
      frame,
      [axisMm + side * (radiusMm - BUSHING_WALL_MM), planeMm],
      [axisMm + side * radiusMm, planeMm * 0.2],
    ),
  );
  return [...board("template", template), path({ of: "bushing" }, walls, "medium", "ink")];
}

function board(of: string, contours: Contour[]): Item[] {
  return [path({ of }, contours, "medium", "paper"), hatched({ of }, contours, TEMPLATE)];
}
