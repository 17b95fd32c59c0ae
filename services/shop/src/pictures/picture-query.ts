import { PICTURES, type PictureKind } from "@rimwise/drawing";
import Type, { type Static } from "typebox";

const LEAST_WIDTH_PX = 100;
const MOST_WIDTH_PX = 2000;
const USUAL_WIDTH_PX = 1000;

/** The query of a picture, of one of these kinds: the first if none is named. */
export function pictureQuery<const Kind extends PictureKind>(kinds: readonly [Kind, ...Kind[]]) {
  const [usual] = kinds;
  const meanings = kinds.map((kind) => `\`${kind}\`: ${PICTURES[kind].meaning}`).join(" ");
  return Type.Object(
    {
      kind: Type.Enum([...kinds], {
        type: "string",
        default: usual,
        description: `What it shows. ${meanings}`,
      }),
      units: Type.Enum(["metric", "imperial"], {
        type: "string",
        default: "metric",
        description: "The units it speaks.",
      }),
      format: Type.Enum(["svg", "png"], {
        type: "string",
        default: "svg",
        description:
          "SVG, which stays sharp at any size and can be read aloud; or PNG, for what shows no SVG.",
      }),
      widthPx: Type.Integer({
        minimum: LEAST_WIDTH_PX,
        maximum: MOST_WIDTH_PX,
        default: USUAL_WIDTH_PX,
        description: "How wide a PNG is.",
      }),
    },
    { additionalProperties: false },
  );
}

export type PictureQuery<Kind extends PictureKind> = Static<ReturnType<typeof pictureQuery<Kind>>>;
