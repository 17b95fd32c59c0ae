/** Every picture is as wide as this, mm: it fills a phone, and half of an A4 sheet or an index card. */
export const PAGE_WIDTH_MM = 120;
export const MARGIN_MM = 4;
export const INNER_WIDTH_MM = PAGE_WIDTH_MM - 2 * MARGIN_MM;

/** Heights of letters, mm. Nothing is smaller than the last: on a phone it is still read in the sun. */
export const TITLE_MM = 4.2;
export const TEXT_MM = 3.2;
export const SMALL_MM = 2.8;

/** From one baseline to the next, in heights of the letter: a little more than the font reaches up and down. */
export const LEADING = 1.3;
