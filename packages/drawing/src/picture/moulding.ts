import {
  describePresentation,
  type Outline,
  type Piece,
  type Presentation,
  type ProfilePoint,
  profileAfter,
  type SearchSetting,
  type Show,
  type WantedProfile,
} from "@rimwise/domain";
import { hatched, hatchOf } from "../drafting/hatch.ts";
import { hatchList } from "../drafting/hatch-list.ts";
import { INNER_WIDTH_MM, MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "../drafting/page.ts";
import { CHORD_MM } from "../drafting/profile-contours.ts";
import { scaleFor, scaleText } from "../drafting/scale.ts";
import { heading, paragraphs } from "../drafting/text.ts";
import type { Contour } from "../scene/contour.ts";
import { type Frame, onPaper } from "../scene/frame.ts";
import { path, polyline, worldRectangle } from "../scene/path.ts";
import type { Item, Scene } from "../scene/scene.ts";
import { type DrawnUnits, definePicture } from "./define.ts";

/** One of the set-ups that make a moulding together, in the order of work. */
export type MouldingSetup = {
  readonly setting: Pick<SearchSetting, "presentation" | "heightMm" | "fenceMm">;
  readonly outline: Outline;
  /** What the shop calls the bit. */
  readonly bitName: string;
};

/** What a moulding is drawn of. */
export type MouldingDrawn = {
  readonly wanted: WantedProfile;
  readonly setups: readonly MouldingSetup[];
  readonly name: string;
  readonly units: DrawnUnits;
};

/** A wanted profile, and what each of several set-ups takes of it. */
export const mouldingPicture = definePicture<"moulding", MouldingDrawn>({
  kind: "moulding",
  meaning: "A wanted profile in section, with the share of each set-up that makes it, hatched and numbered.",
  draw,
});

/** Stock shown past the profile, mm in the world, and the least that is drawn. */
const BEYOND_MM = 8;
const MOST_HEIGHT_MM = 80;
/** An arc is drawn as so many chords: within a hundredth of a millimetre of one of 30 mm radius. */
const CHORDS = 64;

function draw({ wanted, setups, name }: MouldingDrawn, show: Show): Scene {
  const head = heading(name);
  const walls = wallOf(wanted);
  const deepestMm = Math.max(...walls.map(({ xMm }) => xMm)) + BEYOND_MM;
  const topMm = head.bottomMm + 2;
  const scale = scaleFor(
    { widthMm: deepestMm, heightMm: wanted.thicknessMm },
    { widthMm: INNER_WIDTH_MM - 8, heightMm: MOST_HEIGHT_MM },
  );
  const frame: Frame = {
    originXMm: (PAGE_WIDTH_MM - scale * deepestMm) / 2,
    originYMm: topMm + scale * wanted.thicknessMm,
    scaleX: scale,
    scaleY: -scale,
  };
  const bottomMm = topMm + scale * wanted.thicknessMm + 3;
  const stock = worldRectangle(frame, [0, 0], [deepestMm, wanted.thicknessMm]);
  const shares = setups.map((setup) => shareOf(setup, wanted.thicknessMm, deepestMm, frame));
  // What an earlier set-up took is not there for a later one: it is drawn over it.
  const painted = shares
    .flatMap((contours, index) => layer(contours, index + 1))
    .reverse()
    .flat();
  const about = paragraphs(
    [
      `Scale ${scaleText(scale)}. The front face is below, the edge on the left. Heavy: the profile that is wanted.`,
    ],
    bottomMm,
    { sizeMm: SMALL_MM },
  );
  const list = hatchList(
    setups.map((setup) => sentenceOf(setup, show)),
    about.bottomMm + 1,
  );
  const items: Item[] = [
    path({ of: "stock" }, stock, "dashed", "pale"),
    ...painted,
    path({ of: "wanted" }, polyline(walls.map(({ xMm, zMm }) => onPaper(frame, xMm, zMm))), "heavy"),
  ];
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm: list.bottomMm + MARGIN_MM,
    title: `Moulding: ${name}`,
    description: setups.map((setup, index) => `Set-up ${index + 1}: ${sentenceOf(setup, show)}`).join(" "),
    items: [
      ...head.items,
      { kind: "group", of: "moulding", label: "Section of the moulding", frame, items },
      ...about.items,
      ...list.items,
    ],
  };
}

function layer(contours: readonly Contour[], number: number): Item[][] {
  return [
    [
      path({ of: "share", number }, contours, "thin", "paper"),
      hatched({ of: "share", number }, contours, hatchOf(number)),
    ],
  ];
}

/** What a set-up takes by itself, in the stock: its gone wood closed along the face or edge that it came in by. */
function shareOf(
  { setting, outline }: MouldingSetup,
  thicknessMm: number,
  deepestMm: number,
  frame: Frame,
): Contour[] {
  const { presentation, heightMm, fenceMm } = setting;
  const isFlat = presentation.work === "flat";
  const alongMm = isFlat ? thicknessMm : Math.max(deepestMm, heightMm);
  const [piece] = profileAfter(
    outline,
    { heightMm, fenceMm, thicknessMm: alongMm },
    { sides: 1, toleranceMm: CHORD_MM, depthMm: isFlat ? deepestMm : thicknessMm },
  );
  if (piece === undefined) return [];
  // The first and the last corner are those of the uncut wood; between them runs the wall.
  const wall = piece.boundary.slice(1, -1);
  const gone = [{ xMm: 0, zMm: alongMm }, ...wall, { xMm: 0, zMm: 0 }];
  return polyline(
    gone.map((point) => {
      const { xMm, zMm } = inStock(point, presentation, thicknessMm);
      return onPaper(frame, Math.min(xMm, deepestMm), zMm);
    }),
    true,
  );
}

/** A place as the bit sees it, in x from the edge and z from the front face. */
function inStock(
  { xMm, zMm }: ProfilePoint,
  { work, face }: Presentation,
  thicknessMm: number,
): ProfilePoint {
  if (work === "flat") return { xMm, zMm: face === "front" ? zMm : thicknessMm - zMm };
  return { xMm: zMm, zMm: face === "front" ? xMm : thicknessMm - xMm };
}

/** The wanted wall as one line, seen flat if it can be, else as the first standing view shows it. */
function wallOf({ walls, thicknessMm }: WantedProfile): ProfilePoint[] {
  const wall = walls.find(({ work }) => work === "flat") ?? walls[0];
  if (wall === undefined) return [];
  return wall.pieces
    .filter((piece) => wall.work === "flat" || startOf(piece) > 0 || endOf(piece) > 0)
    .flatMap((piece) => cornersOf(piece).map((point) => inStock(point, wall, thicknessMm)));
}

function cornersOf(piece: Piece): ProfilePoint[] {
  if (piece.kind === "line") {
    return [piece.fromMm, piece.toMm].map((zMm) => ({ xMm: depthAt(piece, zMm), zMm }));
  }
  const { centreMm, arcRadiusMm, fromMm, toMm } = piece;
  const angle = (zMm: number) => Math.asin(Math.max(-1, Math.min(1, (zMm - centreMm) / arcRadiusMm)));
  const [start, span] = [angle(fromMm), angle(toMm) - angle(fromMm)];
  return Array.from({ length: CHORDS + 1 }, (_, index) => {
    const turn = start + (span * index) / CHORDS;
    // Depth from the angle too: near a square end its root is coarse.
    const xMm = piece.centreDepthMm + piece.side * arcRadiusMm * Math.cos(turn);
    return { xMm, zMm: centreMm + arcRadiusMm * Math.sin(turn) };
  });
}

function startOf(piece: Piece): number {
  return depthAt(piece, piece.fromMm);
}

function endOf(piece: Piece): number {
  return depthAt(piece, piece.toMm);
}

function depthAt(piece: Piece, zMm: number): number {
  if (piece.kind === "line") {
    const spanMm = piece.toMm - piece.fromMm;
    const share = spanMm === 0 ? 0 : (zMm - piece.fromMm) / spanMm;
    return piece.startDepthMm + (piece.endDepthMm - piece.startDepthMm) * share;
  }
  const offMm = zMm - piece.centreMm;
  return piece.centreDepthMm + piece.side * Math.sqrt(Math.max(0, piece.arcRadiusMm ** 2 - offMm ** 2));
}

function sentenceOf({ setting, bitName }: MouldingSetup, show: Show): string {
  const { presentation, heightMm, fenceMm } = setting;
  return `${bitName}: the work ${describePresentation(presentation)}. Height ${show.length(heightMm)}, fence ${show.length(fenceMm)} in front of the bit's centre.`;
}
