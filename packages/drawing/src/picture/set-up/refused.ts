import { describeFinding, type Plan, type Show } from "@rimwise/domain";
import { INNER_WIDTH_MM, MARGIN_MM, PAGE_WIDTH_MM, TITLE_MM } from "../../drafting/page.ts";
import { paragraph, paragraphs, type Rows } from "../../drafting/text.ts";
import { path, rectangle } from "../../scene/path.ts";

const INSIDE_MM = 4;

/** Instead of a setting: that it must not be run, and why. */
export function refused({ findings }: Plan, topMm: number, show: Show): Rows {
  const xMm = MARGIN_MM + INSIDE_MM;
  const widthMm = INNER_WIDTH_MM - 2 * INSIDE_MM;
  const title = paragraph("Do not run this cut.", topMm + INSIDE_MM, {
    xMm,
    widthMm,
    sizeMm: TITLE_MM,
    weight: "bold",
  });
  const reasons = paragraphs(reasonsOf(findings, show), title.bottomMm + 1, { xMm, widthMm });
  const box = rectangle(
    { xMm: MARGIN_MM, yMm: topMm },
    { xMm: PAGE_WIDTH_MM - MARGIN_MM, yMm: reasons.bottomMm + INSIDE_MM },
  );
  return {
    items: [path({ of: "refusal" }, box, "heavy"), ...title.items, ...reasons.items],
    bottomMm: reasons.bottomMm + INSIDE_MM + 2,
  };
}

/** Every finding that stops the plan, as a sentence. */
export function reasonsOf(findings: Plan["findings"], show: Show): string[] {
  return findings
    .filter(({ severity }) => severity === "refuse")
    .map((finding) => describeFinding(finding, show));
}
