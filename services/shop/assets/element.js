const SUPERVISION = {
  beside: "somebody in charge stands beside",
  "in-the-room": "somebody in charge is in the room",
  "on-call": "somebody in charge can be called",
};

/** An element with attributes and children. Text is only ever text: nothing that a record says can be markup. */
export function element(name, attributes, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.append(...children.filter((child) => child !== null && child !== undefined));
  return made;
}

/** Replaces what a place shows. */
export function say(place, ...children) {
  place.replaceChildren(...children.filter((child) => child !== null && child !== undefined));
}

/** Names with their values; those without a value are left out. */
export function facts(pairs) {
  const known = pairs.filter(([, value]) => value !== undefined && value !== null && value !== "");
  return element(
    "dl",
    {},
    ...known.flatMap(([name, value]) => [element("dt", {}, name), element("dd", {}, String(value))]),
  );
}

/** A heading with a list under it, or nothing where the list is empty. */
export function section(title, items, list = "ul") {
  if (items.length === 0) return [];
  return [element("h2", {}, title), element(list, {}, ...items.map((item) => element("li", {}, item)))];
}

/** A moment as people here write it. */
export function when(moment) {
  return moment === undefined
    ? undefined
    : new Date(moment).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
}

/** Millimetres with a comma or point as people here write it. */
export function mm(value) {
  return value === undefined ? undefined : `${value.toLocaleString()} mm`;
}

/** A speed as people here write it. */
export function rpm(value) {
  return value === undefined || value === null ? undefined : `${value.toLocaleString()} rpm`;
}

/** A code as words: `diameter-chart` as diameter chart. */
export function words(code) {
  return code.replaceAll("-", " ");
}

/** How closely somebody must watch, as a person says it. */
export function supervisionOf(level) {
  return SUPERVISION[level] ?? level;
}

/** An address for bytes or text that a picture can be shown from. */
export function picture(content, type) {
  return URL.createObjectURL(new Blob([content], { type }));
}
