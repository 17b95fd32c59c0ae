import type { Contour, Piece, Point } from "../scene/contour.ts";
import type { Frame } from "../scene/frame.ts";
import type { GroupItem, Item, Scene, TextItem } from "../scene/scene.ts";

/** Where a drawing lies on a page: its upper left corner, and how many mm there one mm of it takes. */
export type Place = { readonly xMm: number; readonly yMm: number; readonly scale: number };

/**
 * A scene as one group of a page, moved and scaled, under its title and description. Lines keep their width, and arrows their size.
 * @example
 * const scene = { widthMm: 40, heightMm: 20, title: "A bit", description: "To scale.", items: [] };
 * placed(scene, { xMm: 10, yMm: 5, scale: 0.5 }) // → { kind: "group", of: "picture", label: "A bit. To scale.", items: [] }
 */
export function placed({ title, description, items }: Scene, place: Place): GroupItem {
  const label = [title, description].map((each) => each.replace(/\.?\s*$/, ".")).join(" ");
  return { kind: "group", of: "picture", label, items: placedItems(items, place) };
}

/** The same of items without a group around them. */
export function placedItems(items: readonly Item[], place: Place): Item[] {
  return items.map((item) => placedItem(item, place));
}

function placedItem(item: Item, place: Place): Item {
  switch (item.kind) {
    case "path":
      return { ...item, contours: item.contours.map((each) => contour(each, place)) };
    case "text":
      return text(item, place);
    case "measure": {
      const { from, to, along, lineAtMm, label } = item;
      const line = point(along === "x" ? { xMm: 0, yMm: lineAtMm } : { xMm: lineAtMm, yMm: 0 }, place);
      return {
        ...item,
        from: point(from, place),
        to: point(to, place),
        lineAtMm: along === "x" ? line.yMm : line.xMm,
        label: text(label, place),
      };
    }
    case "group":
      return {
        ...item,
        ...(item.frame && { frame: frame(item.frame, place) }),
        items: placedItems(item.items, place),
      };
  }
}

function point({ xMm, yMm }: Point, place: Place): Point {
  return { xMm: place.xMm + place.scale * xMm, yMm: place.yMm + place.scale * yMm };
}

function text(item: TextItem, place: Place): TextItem {
  return { ...item, ...point(item, place), sizeMm: item.sizeMm * place.scale };
}

function contour({ start, pieces, isClosed }: Contour, place: Place): Contour {
  return { start: point(start, place), pieces: pieces.map((each) => piece(each, place)), isClosed };
}

function piece(given: Piece, place: Place): Piece {
  const to = point(given.to, place);
  return "radiusMm" in given ? { ...given, to, radiusMm: given.radiusMm * place.scale } : { to };
}

function frame({ originXMm, originYMm, scaleX, scaleY }: Frame, place: Place): Frame {
  const origin = point({ xMm: originXMm, yMm: originYMm }, place);
  return {
    originXMm: origin.xMm,
    originYMm: origin.yMm,
    scaleX: scaleX * place.scale,
    scaleY: scaleY * place.scale,
  };
}
