const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
};

/** What XML has no place for: control characters, halves of pairs, and places that no sign has. */
const NOT_XML = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

/** Most texts need nothing. */
const IS_SAFE = /^[ !#-%'-;=?-~]*$/;

/**
 * Text for XML, between tags or in a quoted attribute: nothing in it can be markup, and signs that XML has no place for are omitted.
 * @example
 * escaped('3/4" < 1"') // → "3/4&quot; &lt; 1&quot;"
 */
export function escaped(text: string): string {
  if (IS_SAFE.test(text)) return text;
  return text.replaceAll(NOT_XML, "").replaceAll(/[&<>"]/g, (sign) => ENTITIES[sign] ?? "");
}
