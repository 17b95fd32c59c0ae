import type { Fill, LineStyle } from "../scene/scene.ts";

/** DejaVu Sans, by whose widths everything was laid out; any other face is squeezed into the same room. */
export const FONT_FAMILY = "'DejaVu Sans', sans-serif";

/** Widths of line about a factor of 1.4 to 2 apart, after ISO 128, from memory. */
export const LINES: Readonly<Record<LineStyle, string>> = {
  none: "",
  thin: ` stroke="#000" stroke-width=".18"`,
  medium: ` stroke="#000" stroke-width=".35"`,
  heavy: ` stroke="#000" stroke-width=".7" stroke-linejoin="round"`,
  dashed: ` stroke="#000" stroke-width=".25" stroke-dasharray="1.6 1"`,
  chain: ` stroke="#000" stroke-width=".18" stroke-dasharray="4 .8 .6 .8"`,
  erased: ` stroke="#fff" stroke-width=".6"`,
};

export const FILLS: Readonly<Record<Fill, string>> = {
  none: ` fill="none"`,
  paper: ` fill="#fff" fill-rule="evenodd"`,
  pale: ` fill="#e4e4e4" fill-rule="evenodd"`,
  ink: ` fill="#000" fill-rule="evenodd"`,
};
