/** What XML has no place for, and what would turn the direction of the text around it. */
const NOT_SHOWN =
  /[^\t\n\r\u{20}-\u{7E}\u{85}\u{A0}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]|[\u{200E}\u{200F}\u{061C}\u{202A}-\u{202E}\u{2066}-\u{2069}\u{FFFC}]/gu;

/** Most texts are: words of plain letters with single spaces between them. */
const IS_PLAIN = /^(?:[!-~]+(?: [!-~]+)*)?$/;

/**
 * A text that any reader of XML takes, without signs that show nothing and only steer: control characters, halves of pairs, marks of
 * direction. Blanks of every kind become one space.
 * @example
 * plain("a\u0000b\n c") // → "ab c"
 */
export function plain(text: string): string {
  if (IS_PLAIN.test(text)) return text;
  return text.replaceAll(NOT_SHOWN, "").replaceAll(/\s+/gu, " ").trim();
}
