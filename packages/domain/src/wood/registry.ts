import { PLASTICS, SHEETS } from "./materials.ts";
import { DOMESTIC_HARDWOODS } from "./species/domestic-hardwoods.ts";
import { DOMESTIC_SOFTWOODS } from "./species/domestic-softwoods.ts";
import { IMPORTED_WOODS } from "./species/imported-woods.ts";
import type { Species, Wood } from "./wood.ts";

/** Every species, by group and then as the source lists them. */
export const SPECIES: readonly Species[] = [...DOMESTIC_HARDWOODS, ...DOMESTIC_SOFTWOODS, ...IMPORTED_WOODS];

/** Everything a cut can be planned in: species, then sheet goods, then plastics. */
export const WOODS: readonly Wood[] = [...SPECIES, ...SHEETS, ...PLASTICS];

const BY_ID: ReadonlyMap<string, Wood> = new Map(WOODS.map((wood) => [wood.id, wood]));

/**
 * The wood with this id, such as "black-cherry"; undefined if there is none.
 * @example
 * woodById("black-cherry").kind // → "species"
 */
export function woodById(id: string): Wood | undefined {
  return BY_ID.get(id);
}
