import { type Bit, FORMS, type Show } from "@rimwise/domain";

/** The dimensions of its form as the shop gave them, and what else is known of the bit, each a line of text. */
export function dimensionLines(bit: Bit, show: Show): string[] {
  const specs = FORMS.find(({ kind }) => kind === bit.form.kind)?.dimensions ?? {};
  const given = new Map<string, unknown>(Object.entries(bit.form));
  const sizes = Object.entries(specs).flatMap(([name, spec]) => {
    const value = given.get(name);
    if (value === undefined || spec.type === "segments") return [];
    return [`${wordsOf(name)} ${spec.type === "measure" ? sizeText(Number(value), spec.unit, show) : value}`];
  });
  const known = [
    ...(bit.massG === undefined ? [] : [`mass ${show.mass(bit.massG)}`]),
    ...(bit.runOutMm === undefined ? [] : [`run-out ${show.fine(bit.runOutMm)}`]),
    ...(bit.stickOutMm === undefined ? [] : [`stick-out ${show.length(bit.stickOutMm)}`]),
    ...(bit.markedMaxRpm === undefined ? [] : [`marked for at most ${show.rotation(bit.markedMaxRpm)}`]),
  ];
  return [sizes, known].filter((list) => list.length > 0).map((list) => `${sentence(list.join("; "))}.`);
}

function sizeText(value: number, unit: "mm" | "deg" | "count" | "ratio", show: Show): string {
  switch (unit) {
    case "mm":
      return show.length(value);
    case "deg":
      return `${value}°`;
    case "ratio":
      return show.percent(value);
    case "count":
      return String(value);
  }
}

/** The words of a field's name without its unit: "pilotDiameterMm" is "pilot diameter". */
function wordsOf(name: string): string {
  return name.replace(/(Mm|Deg|Ratio)$/, "").replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
