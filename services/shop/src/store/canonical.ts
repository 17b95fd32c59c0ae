type Members = Readonly<Record<string, unknown>>;

/** Up to so many names are put in order one by one. */
const FEW_NAMES = 40;

/** A text whose every character stands in JSON as it is. */
const UNESCAPED = /^[\x20\x21\x23-\x5b\x5d-\x7e]*$/;

/**
 * A value as canonical JSON (RFC 8785): the same bytes whatever order its members came in. Throws for what JSON cannot say; a member
 * that is undefined is left out, an item is null.
 */
export function canonicalText(value: unknown): string {
  switch (typeof value) {
    case "string":
      return textInQuotes(value);
    case "number":
      if (!Number.isFinite(value)) throw notJson();
      return String(value === 0 ? 0 : value);
    case "boolean":
      return String(value);
    case "object":
      if (value === null) return "null";
      if (Array.isArray(value)) return listText(value);
      if (isPlain(value)) return membersText(value);
      throw notJson();
    default:
      throw notJson();
  }
}

/** Not a date, a map or the like, of which the members say nothing. */
function isPlain(value: object): value is Members {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

function listText(items: readonly unknown[]): string {
  let text = "[";
  for (let index = 0; index < items.length; index += 1) {
    text += `${index === 0 ? "" : ","}${canonicalText(items[index] ?? null)}`;
  }
  return `${text}]`;
}

function membersText(members: Members): string {
  let text = "{";
  for (const name of inOrder(Object.keys(members))) {
    const member = members[name];
    if (member === undefined) continue;
    text += `${text === "{" ? "" : ","}${textInQuotes(name)}:${canonicalText(member)}`;
  }
  return `${text}}`;
}

/** Section 3.2.3: by UTF-16 code units. `sort` copies what it sorts, which for a few names costs more than sorting them here. */
function inOrder(names: string[]): readonly string[] {
  if (names.length > FEW_NAMES) return names.sort();
  for (let next = 1; next < names.length; next += 1) {
    const name = String(names[next]);
    let place = next;
    for (; place > 0 && String(names[place - 1]) > name; place -= 1) names[place] = String(names[place - 1]);
    names[place] = name;
  }
  return names;
}

function textInQuotes(text: string): string {
  return UNESCAPED.test(text) ? `"${text}"` : JSON.stringify(text);
}

function notJson(): TypeError {
  return new TypeError("only JSON values have a canonical text");
}
