import type { Bit } from "../../bit/bit.ts";
import { formOutline, formPilotRadiusMm } from "../../bit/form/registry.ts";
import { outlineLengthMm } from "../../bit/outline.ts";
import { type BitSetting, firstContactMm } from "../../bit/section.ts";
import { isUndercut } from "../../bit/shape.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import { DomainError } from "../../quantity/fault.ts";
import { type JointHalf, wallOf } from "../half.ts";
import { defineJoint, fenceForReachMm, formOf, mustBeThick } from "./define.ts";
import { GROOVERS, slotDepthMm, slotSetting } from "./slot.ts";

const FRAME_BITS = ["stick", ...GROOVERS] as const;

/** A panel's tongue in a frame's groove, the show face of both on the table. The tongue's thickness is the panel bit's height. Source: common practice. */
export const panelAndGroove = defineJoint({
  kind: "panel-and-groove",
  meaning: "The tongue of a raised panel in the groove of its frame.",
  halves: [
    { name: "frame", forms: FRAME_BITS, cut: "edge" },
    { name: "panel", forms: ["panel-raising"], cut: "panel" },
  ],
  isTurnedOver: false,
  closes: "pushed",
  isCorner: false,
  meetAtMm: ([frame, panel]) => [middleMm(grooveIn(frame)), middleMm(tongueOf(panel, grooveDepthMm(frame)))],
  settings: ([frame, panel], asked) => {
    const { thicknessMm, otherThicknessMm = thicknessMm, clearanceMm = 0 } = asked;
    formOf(panel, 1, ["panel-raising"]);
    const frameSetting = grooveSetting(frame, thicknessMm, asked.depthMm);
    const grooved = { bit: frame, setting: frameSetting };
    const tongueMm = lengthMm(grooveIn(grooved)) - clearanceMm;
    const depthMm = grooveDepthMm(grooved);
    return [frameSetting, panelSetting(panel, otherThicknessMm, { depthMm, tongueMm })];
  },
  meetsBy: "middle",
  goesInMm: ([frame, panel]) => [lengthMm(grooveIn(frame)), lengthMm(tongueOf(panel, grooveDepthMm(frame)))],
  touchesThroughout: false,
  fitBy: "height",
});

type Between = { readonly fromMm: number; readonly toMm: number };
type Tongue = { readonly depthMm: number; readonly tongueMm: number };

function grooveSetting(bit: Bit, thicknessMm: number, askedMm: number | undefined): BitSetting {
  const form = formOf(bit, 0, FRAME_BITS);
  if (form.kind !== "stick") {
    return slotSetting(bit, thicknessMm / 2, thicknessMm, slotDepthMm(bit, askedMm));
  }
  const heightMm = outlineLengthMm(formOutline(form));
  mustBeThick(thicknessMm, { above: heightMm });
  return { heightMm, fenceMm: fenceForReachMm(bit, form.grooveDepthMm), thicknessMm };
}

/** The higher the bit, the less is left of the tongue where it is deepest in the groove. A back-cutter fixes it. */
function panelSetting(bit: Bit, thicknessMm: number, { depthMm, tongueMm }: Tongue): BitSetting {
  const outline = formOutline(bit.form);
  const fenceMm = formPilotRadiusMm(bit.form) ?? 0;
  if (isUndercut(outline)) return { heightMm: outlineLengthMm(outline), fenceMm, thicknessMm };
  const contactMm = firstContactMm(outline, fenceMm + depthMm) ?? outlineLengthMm(outline);
  const heightMm = contactMm + thicknessMm - tongueMm;
  const reachMm = outlineLengthMm(outline);
  if (heightMm > reachMm) {
    const values = { given: thicknessMm, max: thicknessMm - (heightMm - reachMm) };
    throw new DomainError([{ pointer: "/otherThicknessMm", code: "setting-out-of-reach", values }]);
  }
  return { heightMm, fenceMm, thicknessMm };
}

/** Where the frame's wood is gone as deep as the groove goes. */
function grooveIn(frame: JointHalf): Between {
  const deepestMm = Math.max(
    ...wallOf(frame).map(({ startWidthMm, endWidthMm }) => Math.max(startWidthMm, endWidthMm)),
  );
  const deep = wallOf(frame).filter(({ startWidthMm }) => startWidthMm === deepestMm);
  return { fromMm: deep[0]?.fromMm ?? 0, toMm: deep.at(-1)?.toMm ?? 0 };
}

/** What stands of a panel so far in from its edge: the highest stretch, at its back. */
function tongueOf(panel: JointHalf, inMm: number): Between {
  let toMm: number | undefined;
  let fromMm = 0;
  for (const strip of wallOf(panel).reverse()) {
    const [lowMm, highMm] = [strip.startWidthMm, strip.endWidthMm];
    if (toMm === undefined && Math.min(lowMm, highMm) <= inMm) toMm = strip.toMm;
    if (toMm === undefined) continue;
    // The strip that passes the depth ends the tongue where it does.
    if (lowMm > inMm) {
      fromMm =
        highMm > inMm
          ? strip.toMm
          : strip.toMm - ((inMm - highMm) / (lowMm - highMm)) * (strip.toMm - strip.fromMm);
      return { fromMm, toMm };
    }
  }
  return { fromMm, toMm: toMm ?? 0 };
}

function grooveDepthMm({ bit, setting }: JointHalf): number {
  return rimRadiusMm(formOutline(bit.form)) - setting.fenceMm;
}

function lengthMm({ fromMm, toMm }: Between): number {
  return toMm - fromMm;
}

function middleMm({ fromMm, toMm }: Between): number {
  return (fromMm + toMm) / 2;
}
