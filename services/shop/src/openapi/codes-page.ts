import { LIMITS } from "@rimwise/domain";
import { ReasonWhyNotCode } from "../checks/codes.ts";
import { EventType } from "../events/types.ts";
import type { CodeList } from "../http/code-list.ts";
import { JOB_CODES } from "../jobs/codes.ts";
import { JOINT_CODES } from "../joints/codes.ts";
import { PANEL_CODES } from "../panels/codes.ts";
import { LimitName, PLAN_CODES } from "../plans/codes.ts";
import { PROBLEMS } from "../problems/codes.ts";
import { ProfileNotTakenCode } from "../profiles/codes.ts";
import { MissingCode } from "../qualifications/codes.ts";

const LISTS: readonly CodeList[] = [
  ...PLAN_CODES,
  ...PANEL_CODES,
  ...JOINT_CODES,
  ...JOB_CODES,
  ProfileNotTakenCode,
  MissingCode,
  ReasonWhyNotCode,
  EventType,
];

const INTRODUCTION = `# Codes

What programs branch on in answers, with what each means in general; the text beside a code says it of the case at hand. Later
versions may add codes, so have a default for those you do not know, on the cautious side. Written by \`pnpm generate\`.`;

/** Every code that answers hold, as one page in Markdown. */
export function codesPage(): string {
  return `${[INTRODUCTION, ...LISTS.map(sectionOf), problemSection()].join("\n\n")}\n`;
}

function sectionOf(list: CodeList): string {
  const table = list.name === LimitName.name ? limitTable() : meaningTable(list);
  return section(list.name, list.title, table);
}

function meaningTable({ meanings }: CodeList): string[] {
  return rows(["code", "meaning"], Object.entries(meanings));
}

function limitTable(): string[] {
  const limits = LIMITS.map(({ name, strength, formula, source }) => {
    return [name, LimitName.meanings[name], strength, formula, source];
  });
  return rows(["code", "meaning", "strength", "formula", "source"], limits);
}

function problemSection(): string {
  const problems = Object.entries(PROBLEMS).map(([code, { status, title }]) => [code, title, String(status)]);
  return section("Problem", "Errors, by their `code`", rows(["code", "title", "status"], problems));
}

function section(name: string, title: string, table: readonly string[]): string {
  return [`## ${name}`, "", `${title}.`, "", ...table].join("\n");
}

function rows(head: readonly string[], body: readonly (readonly string[])[]): string[] {
  const row = (cells: readonly string[]) =>
    `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  const coded = body.map(([code = "", ...rest]) => row([`\`${code}\``, ...rest]));
  return [row(head), `|${"---|".repeat(head.length)}`, ...coded];
}
