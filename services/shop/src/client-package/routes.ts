import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import Type from "typebox";
import type { App } from "../http/app-type.ts";
import { lazily } from "../http/lazily.ts";
import { ref } from "../http/reference.ts";
import { Problem } from "../problems/problem.ts";
import { ProblemSchema } from "../problems/schema.ts";
import { SERVICE_VERSION } from "../version.ts";

const GZIP = "application/gzip";

/** Where `pnpm build` puts it, seen from the built service and from its sources. */
const BUILT = ["../client.tgz", "../../dist/client.tgz"].map((place) =>
  fileURLToPath(new URL(place, import.meta.url)),
);

/** `file` is the package to serve. Default: the one that was built with this service. */
export function clientPackageRoutes(app: App, file?: string): void {
  // Some hundred kilobytes that anybody may ask for: read and digested once.
  const kept = lazily(() => {
    const bytes = packageIn(file === undefined ? BUILT : [file]);
    return bytes && { bytes, etag: `"${createHash("sha256").update(bytes).digest("base64url")}"` };
  });
  app.get(
    "/client.tgz",
    {
      config: { scope: "public", operation: "read" },
      schema: {
        operationId: "getClientPackage",
        tags: ["health"],
        summary: "Get the client that fits this service",
        description:
          "An npm package: `npm install` takes this address. The same until the service is upgraded. A service that runs from its sources, unbuilt, has none.",
        response: {
          200: {
            description: "A gzipped tar archive.",
            content: {
              [GZIP]: { schema: Type.Unsafe<Uint8Array>({ type: "string", contentMediaType: GZIP }) },
            },
          },
          404: {
            description: "The client was not built with this service.",
            content: { "application/problem+json": { schema: ref(ProblemSchema) } },
          },
        },
      },
    },
    async (_request, reply) => {
      const found = kept();
      if (found === undefined)
        throw new Problem(
          "not-found",
          "The client was not built with this service. Run `pnpm build`, then start it again.",
        );
      return reply
        .type(GZIP)
        .header("ETag", found.etag)
        .header("Content-Disposition", `attachment; filename="rimwise-client-${SERVICE_VERSION}.tgz"`)
        .send(found.bytes);
    },
  );
}

/** The first of these files that exists; undefined if none does. */
function packageIn(files: readonly string[]): Buffer | undefined {
  for (const file of files) {
    try {
      return readFileSync(file);
    } catch (error) {
      if (!(error instanceof Error && "code" in error && error.code === "ENOENT")) throw error;
    }
  }
  return undefined;
}
