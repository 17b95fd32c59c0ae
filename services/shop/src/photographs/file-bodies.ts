import type { FastifyRequest } from "fastify";
import Type from "typebox";
import type { App } from "../http/app-type.ts";
import { Problem } from "../problems/problem.ts";
import { IMAGE_TYPES } from "./schema.ts";

declare module "fastify" {
  interface FastifyContextConfig {
    /** The body may be an image by itself. */
    takesImages?: true;
  }
}

/** Reads bodies that are an image, for the routes that take them; all others refuse them by their type. */
export function takeImages(app: App): void {
  app.addContentTypeParser([...IMAGE_TYPES], { parseAs: "buffer" }, ({ routeOptions }, body, done) => {
    if (routeOptions.config.takesImages) done(null, body);
    else
      done(
        new Problem("media-type-not-supported", "Send the body as application/json.", {
          headers: { Accept: "application/json" },
        }),
      );
  });
}

/** An image by itself says what it would say as JSON: its type is the body's. */
export async function asPhotograph(request: FastifyRequest): Promise<void> {
  const { body, headers } = request;
  if (!Buffer.isBuffer(body)) return;
  const [mediaType = ""] = (headers["content-type"] ?? "").split(";", 1);
  request.body = { mediaType: mediaType.trim().toLowerCase(), base64: body.toString("base64") };
}

/** The `content` of a body that is an image. */
export const IMAGE_BODY = Object.fromEntries(
  IMAGE_TYPES.map((type) => [type, { schema: Type.Unknown({ description: "The image itself." }) }]),
);
