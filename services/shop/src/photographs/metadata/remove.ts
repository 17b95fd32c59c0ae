import type { ImageType } from "../schema.ts";
import { withoutMetadataJpeg } from "./jpeg.ts";
import { withoutMetadataPng } from "./png.ts";
import { withoutMetadataWebp } from "./webp.ts";

/** An image without what it says beside the picture, turned as it was. Undefined when it cannot be followed to its end. */
export function withoutMetadata(bytes: Buffer, type: ImageType): Buffer | undefined {
  switch (type) {
    case "image/jpeg":
      return withoutMetadataJpeg(bytes);
    case "image/png":
      return withoutMetadataPng(bytes);
    case "image/webp":
      return withoutMetadataWebp(bytes);
  }
}
