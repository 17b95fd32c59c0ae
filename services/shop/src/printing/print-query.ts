import { PAPERS, type PaperName } from "@rimwise/drawing";
import Type, { type Static } from "typebox";
import { namesOf } from "../http/names-of.ts";

const PAPER_NAMES = namesOf(PAPERS);

/** The query of a sheet, on this paper if none is named. */
export function printQuery(usual: PaperName) {
  const meanings = PAPER_NAMES.map((name) => `\`${name}\`: ${PAPERS[name].meaning}`).join(" ");
  return Type.Object(
    {
      paper: Type.Enum([...PAPER_NAMES], {
        type: "string",
        default: usual,
        description: `What it is printed on. ${meanings}`,
      }),
      units: Type.Enum(["metric", "imperial"], {
        type: "string",
        default: "metric",
        description: "The units it speaks.",
      }),
      format: Type.Enum(["pdf", "html", "text"], {
        type: "string",
        default: "pdf",
        description:
          "PDF with its fonts, HTML to print from a browser, or the same in words as plain text, on no paper.",
      }),
    },
    { additionalProperties: false },
  );
}

export type PrintQuery = Static<ReturnType<typeof printQuery>>;
