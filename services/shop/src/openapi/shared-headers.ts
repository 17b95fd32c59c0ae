import type { Header, ResponseObject } from "./responses.ts";

/**
 * Puts the headers of all answers among the components, each once, and leaves references where they were: hundreds of answers
 * have the same few. Gives the components.
 */
export function shareHeaders(answers: Iterable<ResponseObject>): Readonly<Record<string, Header>> {
  const shared = new Map<string, Header>();
  for (const answer of answers) {
    if (answer.headers === undefined) continue;
    answer.headers = Object.fromEntries(
      Object.entries(answer.headers).map(([name, header]) => [name, referenceTo(name, header, shared)]),
    );
  }
  return Object.fromEntries(shared);
}

/** A header of the same name and another meaning gets the next number. */
function referenceTo(name: string, header: Header, shared: Map<string, Header>): Header {
  for (let number = 1; ; number += 1) {
    const key = number === 1 ? name : `${name}-${number}`;
    const kept = shared.get(key);
    if (kept === undefined) shared.set(key, header);
    if (kept === undefined || kept.description === header.description)
      return { $ref: `#/components/headers/${key}` };
  }
}
