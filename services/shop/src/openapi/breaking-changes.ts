/** What breaks callers of an older description of the API: where, and what changed. */
export type BreakingChange = { readonly where: string; readonly what: string };

/** A part of a description: an object of JSON. */
type Part = { readonly [name: string]: unknown };

/** How a schema is used: what callers send must stay accepted, what they are sent must stay readable. */
type Direction = "sent" | "answered";

type Side = { readonly document: Part; readonly schema: Part };

const METHODS = ["get", "put", "post", "patch", "delete"] as const;

/** Limits of what is accepted: raised least values and lowered most ones refuse what was sent before. */
const LEAST = ["minimum", "exclusiveMinimum", "minLength", "minItems"] as const;
const MOST = ["maximum", "exclusiveMaximum", "maxLength", "maxItems"] as const;

/**
 * Every change from one description to a later one that a caller of the first may break on: an operation or answer that is gone, a
 * request that accepts less or needs more, an answer that promises less. New operations, optional fields, and new fields and codes of
 * answers break nobody: answers are open.
 */
export function breakingChanges(before: Part, after: Part): BreakingChange[] {
  const found: BreakingChange[] = [];
  for (const [path, operations] of Object.entries(part(before["paths"]))) {
    for (const method of METHODS) {
      const old = part(operations)[method];
      if (old === undefined) continue;
      const where = `${method.toUpperCase()} ${path}`;
      const next = part(part(after["paths"])[path])[method];
      if (next === undefined) found.push({ where, what: "is gone" });
      else found.push(...changesOf(where, { before, after }, part(old), part(next)));
    }
  }
  return found;
}

type Documents = { readonly before: Part; readonly after: Part };

function changesOf(where: string, documents: Documents, old: Part, next: Part): BreakingChange[] {
  const found: BreakingChange[] = [];
  if (old["operationId"] !== next["operationId"]) {
    found.push({
      where,
      what: `is called ${String(next["operationId"])}, no longer ${String(old["operationId"])}`,
    });
  }
  found.push(...parameterChanges(where, documents, old, next));
  const [oldBody, nextBody] = [bodyOf(old), bodyOf(next)];
  if (nextBody !== undefined && oldBody === undefined && part(next["requestBody"])["required"] === true) {
    found.push({ where, what: "needs a body" });
  }
  if (oldBody !== undefined && nextBody !== undefined) {
    found.push(...schemaChanges(`${where} body`, "sent", ...sides(documents, oldBody, nextBody)));
  }
  for (const [status, answer] of Object.entries(part(old["responses"]))) {
    const nextAnswer = part(next["responses"])[status];
    if (nextAnswer === undefined) {
      if (status.startsWith("2")) found.push({ where, what: `no longer answers ${status}` });
      continue;
    }
    const [oldSchema, nextSchema] = [contentOf(part(answer)), contentOf(part(nextAnswer))];
    if (oldSchema === undefined || nextSchema === undefined) continue;
    found.push(
      ...schemaChanges(`${where} ${status}`, "answered", ...sides(documents, oldSchema, nextSchema)),
    );
  }
  return found;
}

function parameterChanges(where: string, documents: Documents, old: Part, next: Part): BreakingChange[] {
  const known = byName(old);
  const found: BreakingChange[] = [];
  for (const [name, parameter] of byName(next)) {
    const before = known.get(name);
    if (before === undefined) {
      if (parameter["required"] === true) found.push({ where, what: `needs the parameter ${name}` });
      continue;
    }
    const both = sides(documents, part(before["schema"]), part(parameter["schema"]));
    found.push(...schemaChanges(`${where} ${name}`, "sent", ...both));
  }
  for (const name of known.keys()) {
    if (!byName(next).has(name)) found.push({ where, what: `no longer takes the parameter ${name}` });
  }
  return found;
}

function byName(operation: Part): Map<string, Part> {
  const parameters = Array.isArray(operation["parameters"]) ? operation["parameters"] : [];
  return new Map(parameters.map((each: unknown) => [String(part(each)["name"]), part(each)]));
}

/** Changes of a schema and of what it refers to. A schema that refers to itself is looked at once. */
function schemaChanges(
  where: string,
  direction: Direction,
  old: Side,
  next: Side,
  seen: ReadonlySet<unknown> = new Set(),
): BreakingChange[] {
  const [before, after] = [resolved(old), resolved(next)];
  if (seen.has(before)) return [];
  const inside = new Set([...seen, before]);
  const found = [...valueChanges(where, direction, before, after)];
  found.push(
    ...choiceChanges(where, direction, { ...old, schema: before }, { ...next, schema: after }, inside),
  );
  const [oldFields, nextFields] = [part(before["properties"]), part(after["properties"])];
  const [oldNeeds, nextNeeds] = [namesIn(before["required"]), namesIn(after["required"])];
  if (direction === "sent") {
    const more = nextNeeds.filter((name) => !oldNeeds.includes(name));
    found.push(...more.map((name) => ({ where, what: `needs ${name}` })));
  } else {
    const fewer = oldNeeds.filter((name) => !nextNeeds.includes(name) && name in nextFields);
    found.push(...fewer.map((name) => ({ where, what: `may lack ${name}` })));
  }
  for (const [name, field] of Object.entries(oldFields)) {
    if (!(name in nextFields)) {
      found.push({ where, what: `no longer has ${name}` });
      continue;
    }
    const both = [
      { ...old, schema: part(field) },
      { ...next, schema: part(nextFields[name]) },
    ] as const;
    found.push(...schemaChanges(`${where}.${name}`, direction, ...both, inside));
  }
  if (before["items"] !== undefined && after["items"] !== undefined) {
    const both = [
      { ...old, schema: part(before["items"]) },
      { ...next, schema: part(after["items"]) },
    ] as const;
    found.push(...schemaChanges(`${where}[]`, direction, ...both, inside));
  }
  return found;
}

/** Changes of one of several schemas, told apart by their names. */
function choiceChanges(
  where: string,
  direction: Direction,
  old: Side,
  next: Side,
  seen: ReadonlySet<unknown>,
): BreakingChange[] {
  const choices = choicesOf(next.schema);
  return [...choicesOf(old.schema)].flatMap(([name, schema]) => {
    const after = choices.get(name);
    if (after !== undefined) {
      return schemaChanges(
        `${where}(${name})`,
        direction,
        { ...old, schema },
        { ...next, schema: after },
        seen,
      );
    }
    return direction === "sent" ? [{ where, what: `no longer accepts ${name}` }] : [];
  });
}

function choicesOf(schema: Part): Map<string, Part> {
  const choices = schema["oneOf"] ?? schema["anyOf"];
  if (!Array.isArray(choices)) return new Map();
  const named = choices.map(part).filter((choice) => typeof choice["$ref"] === "string");
  return new Map(named.map((choice) => [String(choice["$ref"]).split("/").at(-1) ?? "", choice]));
}

function valueChanges(where: string, direction: Direction, before: Part, after: Part): BreakingChange[] {
  const found: BreakingChange[] = [];
  if (before["type"] !== undefined && after["type"] !== undefined && before["type"] !== after["type"]) {
    found.push({ where, what: `is ${String(after["type"])}, no longer ${String(before["type"])}` });
  }
  if (direction === "answered") return found;
  const [oldValues, nextValues] = [namesIn(before["enum"]), namesIn(after["enum"])];
  const refused = nextValues.length === 0 ? [] : oldValues.filter((value) => !nextValues.includes(value));
  found.push(...refused.map((value) => ({ where, what: `no longer accepts ${value}` })));
  if (oldValues.length === 0 && nextValues.length > 0)
    found.push({ where, what: "accepts only some values" });
  for (const [names, isStricter] of [
    [LEAST, (old: number, next: number) => next > old],
    [MOST, (old: number, next: number) => next < old],
  ] as const) {
    for (const name of names) {
      const [old, next] = [before[name], after[name]];
      if (typeof next !== "number") continue;
      if (typeof old !== "number" || isStricter(old, next))
        found.push({ where, what: `has the ${name} ${next}` });
    }
  }
  if (after["pattern"] !== undefined && after["pattern"] !== before["pattern"]) {
    found.push({ where, what: "has another pattern" });
  }
  return found;
}

function sides({ before, after }: Documents, old: Part, next: Part): [Side, Side] {
  return [
    { document: before, schema: old },
    { document: after, schema: next },
  ];
}

/** The schema that a reference leads to. */
function resolved({ document, schema }: Side): Part {
  const reference = schema["$ref"];
  if (typeof reference !== "string") return schema;
  const steps = reference.replace(/^#\//, "").split("/");
  return part(steps.reduce<unknown>((value, step) => part(value)[step], document));
}

function bodyOf(operation: Part): Part | undefined {
  return contentOf(part(operation["requestBody"]));
}

function contentOf(holder: Part): Part | undefined {
  const [content] = Object.values(part(holder["content"]));
  const schema = part(content)["schema"];
  return schema === undefined ? undefined : part(schema);
}

function namesIn(list: unknown): string[] {
  return Array.isArray(list) ? list.map(String) : [];
}

function part(value: unknown): Part {
  return isPart(value) ? value : {};
}

function isPart(value: unknown): value is Part {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
