/** What is known of something, in words: a title, and lines under labels, the most important first. */
export type Card = { readonly title: string; readonly sections: readonly CardSection[] };

export type CardSection = { readonly label: string; readonly lines: readonly string[] };

/** Signs on a line of a card, and as many of them for the labels. A screen's window and a printed page hold as much. */
const WIDTH = 96;
const LABEL_WIDTH = 13;

/** What steers a terminal or the direction of text and shows nothing: a name may hold it. */
const NOT_SHOWN =
  /[^\t\u{20}-\u{7E}\u{A0}-\u{10FFFF}]|[\u{200E}\u{200F}\u{061C}\u{202A}-\u{202E}\u{2066}-\u{2069}]/gu;

/**
 * A card as plain text, for a terminal or a printer without pictures. Nothing is shortened.
 * @example
 * cardText({ title: "Door panels", sections: [{ label: "verdict", lines: ["RUN"] }] }).split("\n")[1] // → "│ Door panels"
 */
export function cardText({ title, sections }: Card): string {
  const rule = "─".repeat(WIDTH);
  const heads = wrapped(title, WIDTH - 2).map((line) => `│ ${line}`);
  const rows = sections.flatMap(({ label, lines }) =>
    lines
      .flatMap((line) => wrapped(line, WIDTH - LABEL_WIDTH - 2))
      .map((line, index) => `│ ${(index === 0 ? label : "").padEnd(LABEL_WIDTH)}${line}`),
  );
  return [`┌${rule}`, ...heads, `├${rule}`, ...rows, `└${rule}`].join("\n");
}

/** A text on lines of so many signs; what goes on is indented. */
function wrapped(given: string, width: number): string[] {
  const lines: string[] = [];
  for (const text of given.split(/\r\n|[\n\r\u2028\u2029]/)) {
    let line: string | undefined;
    for (const word of text.replaceAll(NOT_SHOWN, "").split(/[ \t]/)) {
      if (line !== undefined && line.length + 1 + word.length > width) {
        lines.push(line);
        line = `  ${word}`;
      } else line = line === undefined ? word : `${line} ${word}`;
    }
    lines.push(line ?? "");
  }
  return lines;
}
