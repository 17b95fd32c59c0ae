import { type Show, showIn } from "@rimwise/domain";
import type { Scene } from "../scene/scene.ts";

/** A picture speaks one system of units: two of them beside each other are too much for a phone. */
export type DrawnUnits = "metric" | "imperial";

/** One kind of picture: what it shows, and how it is drawn of what it is given. */
export type PictureDefinition<Kind extends string, Given> = {
  readonly kind: Kind;
  readonly meaning: string;
  readonly draw: (given: Given, show: Show) => Scene;
};

/** Ties a picture to its kind and to what it is drawn of; gives it the way to show quantities. */
export function definePicture<const Kind extends string, Given extends { readonly units: DrawnUnits }>(
  definition: PictureDefinition<Kind, Given>,
): { readonly kind: Kind; readonly meaning: string; readonly draw: (given: Given) => Scene } {
  const { kind, meaning, draw } = definition;
  return { kind, meaning, draw: (given) => draw(given, showIn(given.units)) };
}
