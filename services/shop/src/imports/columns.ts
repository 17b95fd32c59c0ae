import { type DimensionSpec, FORMS, TOOTH_MATERIALS } from "@rimwise/domain";

/** How a column's cells are read and written. A quantity without a unit is in the unit of the column's name. */
export type CellType =
  | "text"
  | "word"
  | "currency"
  | "truth"
  | "length"
  | "path-length"
  | "mass"
  | "rotation"
  | "angle"
  | "number"
  | "outline";

/** One column of the CSV: its name, and the field of a bit that it holds. */
export type Column = {
  readonly name: string;
  readonly path: readonly [string] | readonly [string, string];
  readonly type: CellType;
  /** The words that a cell may hold, when there are only some. */
  readonly names?: readonly string[];
};

/** Names a row's bit. It is no field of the bit. */
export const ID_COLUMN = "id";

/** Every column but `id`, in the order of an export. */
export const COLUMNS: readonly Column[] = [
  field("name", "text"),
  { name: "kind", path: ["form", "kind"], type: "word", names: FORMS.map(({ kind }) => kind) },
  ...dimensionColumns(),
  field("shankDiameterMm", "length"),
  field("wings", "number"),
  field("massG", "mass"),
  field("runOutMm", "length"),
  field("stickOutMm", "length"),
  field("isEndCutting", "truth"),
  field("markedMaxRpm", "rotation"),
  field("isHandFeedMarked", "truth"),
  { name: "toothMaterial", path: ["toothMaterial"], type: "word", names: TOOTH_MATERIALS },
  field("purchasedOn", "word"),
  { name: "costAmount", path: ["cost", "amount"], type: "number" },
  { name: "costCurrency", path: ["cost", "currency"], type: "currency" },
  field("smallestUsableDiameterMm", "length"),
  field("homePlaceId", "word"),
  field("inspectionIntervalDays", "number"),
  field("inspectionIntervalM", "path-length"),
  field("setName", "text"),
  field("externalId", "text"),
  field("notes", "text"),
];

/** The names of all columns, in the order of an export. */
export const COLUMN_NAMES: readonly string[] = [ID_COLUMN, ...COLUMNS.map(({ name }) => name)];

/** The column that holds what a JSON Pointer into a bit names. */
export function columnAt(pointer: string): Column | undefined {
  return COLUMNS.find(({ path }) => `${pointer}/`.startsWith(`/${path.join("/")}/`));
}

function field(name: string, type: CellType): Column {
  return { name, path: [name], type };
}

/** One column for each dimension that any form has. A name means the same in every form. */
function dimensionColumns(): Column[] {
  const specs = new Map(FORMS.flatMap(({ dimensions }) => Object.entries(dimensions)));
  return [...specs].map(([name, spec]) => ({
    name,
    path: ["form", name],
    type: cellType(spec),
    ...(spec.type === "choice" && { names: choicesOf(name) }),
  }));
}

/** Every name that any form lets one choose from under this dimension. */
function choicesOf(dimension: string): string[] {
  const names = FORMS.flatMap(({ dimensions }) =>
    Object.entries<DimensionSpec>(dimensions).flatMap(([name, spec]) =>
      name === dimension && spec.type === "choice" ? spec.names : [],
    ),
  );
  return [...new Set(names)];
}

function cellType(spec: DimensionSpec): CellType {
  switch (spec.type) {
    case "choice":
      return "word";
    case "segments":
      return "outline";
    case "measure":
      return spec.unit === "mm" ? "length" : spec.unit === "deg" ? "angle" : "number";
  }
}
