/** Where the shop is: under which address people reach it, and whose days it names. */
export type ShopPlace = {
  readonly publicUrl: string;
  /** IANA name of its time zone. */
  readonly timeZone: string;
};

/** The day that a moment falls on where the shop is, such as 26 Nov 2026. */
export function dayIn(timeZone: string, moment: string): string {
  return new Date(moment).toLocaleDateString("en-GB", { timeZone, dateStyle: "medium" });
}
