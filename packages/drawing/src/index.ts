export { ELLIPSIS, type Fitted, fitted, type Room, wrapped } from "./font/fit.ts";
export { ASCENT_EM, DESCENT_EM, textWidthMm, type Weight } from "./font/metrics.ts";
export { plain } from "./font/plain.ts";
export type { BitDrawn } from "./picture/bit/bit.ts";
export type { DayDrawn, DaySetupDrawn } from "./picture/day.ts";
export type { DrawnUnits } from "./picture/define.ts";
export type { DialDrawn } from "./picture/dial.ts";
export type { DiameterSpeedDrawn } from "./picture/diameter-speed.ts";
export type { JointDrawn } from "./picture/joint.ts";
export type { LimitsDrawn } from "./picture/limits.ts";
export type { MouldingDrawn, MouldingSetup } from "./picture/moulding.ts";
export type { PanelDrawn } from "./picture/panel.ts";
export type { PositionState, RackDrawn, RackPosition } from "./picture/rack.ts";
export { PICTURES, type PictureKind } from "./picture/registry.ts";
export type { SetUpDrawn } from "./picture/set-up/set-up.ts";
export type { Contour, Piece, Point } from "./scene/contour.ts";
export { type Frame, inWorld, onPaper } from "./scene/frame.ts";
export type {
  Fill,
  GroupItem,
  Item,
  LineStyle,
  MeasureItem,
  PathItem,
  Scene,
  Shows,
  TextItem,
} from "./scene/scene.ts";
export { type TextBox, textBox, textsOf } from "./scene/text-box.ts";
export { escaped } from "./svg/escape.ts";
export { type SvgOptions, svg } from "./svg/svg.ts";
