import type { PanelSizing, ShopTable } from "@rimwise/client";

/** What the sizing of panels came to: each panel's size, what the year does to it, and how its tongue sits. */
export function panelLines({ panels, work }: PanelSizing): string {
  const lines = panels.flatMap(({ name, count, verdict, width, height, tongue, findings }) => [
    `  ${count} × ${name ?? "panel"}: cut ${width.cutMm} × ${height.cutMm} mm (${verdict}); tongue ${tongue.thicknessMm} mm ${tongue.fit}`,
    `      gap each side now ${width.now.gapMm}, driest ${width.driest.gapMm}, wettest ${width.wettest.gapMm} mm; reaches ${width.driest.engagementMm} mm into the groove at the driest`,
    ...findings.map(({ text }) => `      ${text}`),
  ]);
  const time = work?.time;
  if (!time) return lines.join("\n");
  const minutes = (seconds: number) => `${Math.ceil(seconds / 60)} min`;
  return [
    ...lines,
    `  All edges: ${work.plan.passes.length} passes, ${time.setUps} settings; cutting ${minutes(time.cuttingSeconds)}, setting up ${minutes(time.settingUpSeconds)}`,
  ].join("\n");
}

/** A shop table: a line for each bit, a column for each router. */
export function tableLines(
  { rows }: ShopTable,
  bits: ReadonlyMap<string, string>,
  routers: ReadonlyMap<string, string>,
): string {
  const header = `  ${"".padEnd(NAME_WIDTH)}${[...routers.values()].map((name) => (name.split(",", 1)[0] ?? "").slice(0, CELL_WIDTH - 1).padEnd(CELL_WIDTH)).join("")}`;
  const lines = [...bits].map(([bitId, name]) => {
    const cells = [...routers.keys()].map((routerId) => {
      const row = rows.find((each) => each.bitId === bitId && each.routerId === routerId);
      return cell(row).padEnd(CELL_WIDTH);
    });
    return `  ${name.padEnd(NAME_WIDTH)}${cells.join("")}`;
  });
  return [header, ...lines].join("\n");
}

const NAME_WIDTH = 32;
const CELL_WIDTH = 23;

function cell(row: ShopTable["rows"][number] | undefined): string {
  if (row === undefined || row.rpm === null) return "do not run";
  const mark = row.mark === null ? "" : `${row.mark}: `;
  return `${mark}${row.rpm.toLocaleString("en")}${row.verdict === "run-with-care" ? " care" : ""}`;
}
