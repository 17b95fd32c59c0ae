export { ELLIPSIS, type Fitted, fitted, type Room, wrapped } from "./font/fit.ts";
export { ASCENT_EM, DESCENT_EM, hasEverySign, textWidthMm, type Weight } from "./font/metrics.ts";
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
export { STROKES, type Stroke, TONES } from "./scene/look.ts";
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
export { type CodeModules, code } from "./sheet/code.ts";
export { type DayPrinted, dayCard, daySheet, type FetchPrinted } from "./sheet/day.ts";
export { type Label, type LabelPlace, labelAt, labelScene } from "./sheet/labels/label.ts";
export { labelPage, labelsPerPage } from "./sheet/labels/label-page.ts";
export { STOCKS, type Stock, type StockName } from "./sheet/labels/stock.ts";
export { PAPERS, type Paper, type PaperName } from "./sheet/paper.ts";
export { type Place, placed } from "./sheet/placed.ts";
export { type ApprovedPrinted, approvedCard, approvedSheet } from "./sheet/plan/approved-setting.ts";
export type { PlanNamed } from "./sheet/plan/blocks.ts";
export { type PlanPrinted, planSheet } from "./sheet/plan/plan.ts";
export { SHEET_PARTS, type Sheet, type SheetPart } from "./sheet/sheet.ts";
export { type ChartBit, type WallChartPrinted, wallChartCard, wallChartSheet } from "./sheet/wall-chart.ts";
export { escaped } from "./svg/escape.ts";
export { measureLines } from "./svg/measure-lines.ts";
export { pathData } from "./svg/path-data.ts";
export { type SvgOptions, svg } from "./svg/svg.ts";
