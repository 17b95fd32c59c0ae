import type { Document, Operation } from "./document.ts";
import { isFile, signaturesOf } from "./signatures.ts";

const HEAD = `<!-- Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit. -->

# Methods

Every method of the client, with the call it makes. What each takes and gives is in its type; editors show it over the name.
`;

/** The list of all methods by resource, as a page to read. */
export function methodsText(operations: readonly Operation[], tags: Document["tags"] = []): string {
  const sections = tags.flatMap(({ name, description }) => {
    const own = operations.filter(({ tag }) => tag === name);
    if (own.length === 0) return [];
    const rows = own.map(
      (operation) =>
        `| \`client.${name}.${operation.verb}\` | \`${operation.method} ${operation.path}\` | ${kindOf(operation)} | ${cell(operation.summary)} |`,
    );
    return [
      `\n## ${name}\n\n${description ?? ""}\n\n| method | call | gives | what it does |\n|---|---|---|---|\n${rows.join("\n")}\n`,
    ];
  });
  return `${HEAD}${sections.join("")}`;
}

function kindOf(operation: Operation): string {
  if (operation.isStream) return "events, followed";
  if (operation.cursorParameter !== undefined) return "a list";
  if (isFile(operation)) return "a file";
  const answer = signaturesOf(operation).at(-1)?.answer ?? "";
  const [, type = ""] = /^Answer<(.*)>$/.exec(answer) ?? [];
  return type === "void" ? "nothing" : `\`${type}\``;
}

function cell(text: string): string {
  return text.replaceAll("|", "\\|");
}
