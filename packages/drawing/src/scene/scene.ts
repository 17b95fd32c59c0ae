import type { Contour, Point } from "./contour.ts";
import type { Frame } from "./frame.ts";

/** A drawing: what lies where on a paper of this size, mm from its upper left corner, x to the right and y down. */
export type Scene = {
  readonly widthMm: number;
  readonly heightMm: number;
  /** What is shown, in a few words; and what it says, for somebody who does not see it. */
  readonly title: string;
  readonly description: string;
  readonly items: readonly Item[];
};

export type Item = PathItem | TextItem | MeasureItem | GroupItem;

/** What a path shows. `number` tells several of one kind apart, as the passes of a plan. */
export type Shows = { readonly of: string; readonly number?: number };

export type PathItem = {
  readonly kind: "path";
  readonly shows: Shows;
  readonly contours: readonly Contour[];
  readonly line: LineStyle;
  readonly fill: Fill;
};

/** Meaning by weight and dash, never by colour: heavy is what matters, thin what helps, dashed what is hidden or was there, chain an axis, erased the paper. */
export type LineStyle = "none" | "thin" | "medium" | "heavy" | "dashed" | "chain" | "erased";

/** Tones are greys that stay apart on a poor printer; everything darker is said by hatching, which is drawn as lines. */
export type Fill = "none" | "paper" | "pale" | "ink";

export type TextItem = {
  readonly kind: "text";
  /** Where its baseline begins, has its middle or ends. */
  readonly xMm: number;
  readonly yMm: number;
  readonly sizeMm: number;
  readonly anchor: "start" | "middle" | "end";
  readonly weight: "normal" | "bold";
  readonly text: string;
  /** The whole of a text that was shortened to fit. */
  readonly whole?: string;
};

/** A dimension as a machinist draws it: from one place to another, along one axis, its line off to a side. After ISO 129, from memory. */
export type MeasureItem = {
  readonly kind: "measure";
  /** What is measured, and how much it is in the world. */
  readonly name: string;
  readonly valueMm: number;
  readonly along: "x" | "y";
  /** The two places on paper. */
  readonly from: Point;
  readonly to: Point;
  /** Where the dimension line lies: its y if it measures along x, its x otherwise. */
  readonly lineAtMm: number;
  readonly label: TextItem;
};

/** Items that belong together. A frame says where the world lies on the paper, so that what is drawn can be read back. */
export type GroupItem = {
  readonly kind: "group";
  readonly of: string;
  /** Said of the group by a screen reader; a group without one is passed over. */
  readonly label?: string;
  readonly frame?: Frame;
  readonly items: readonly Item[];
};
