/** Marks that stand on letters. */
const MARKS = /\p{Mark}/gu;

/** A text as it is compared: without capitals and without the marks on letters, so that "ozlem" finds "Özlem". */
export function folded(text: string): string {
  return text.normalize("NFKD").replace(MARKS, "").toLowerCase();
}
