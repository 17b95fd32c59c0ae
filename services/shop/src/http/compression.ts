import { constants } from "node:zlib";
import compress from "@fastify/compress";
import type { onSendHookHandler } from "fastify";
import type { App } from "./app-type.ts";

/** Smaller answers fit into one packet of the network as they are. */
const COMPRESS_FROM_BYTES = 1024;
/** Of 11: answers are made for one caller and once, so that time counts more than the last per cents. */
const BROTLI_QUALITY = 4;
const GZIP_LEVEL = 5;

/** What an ETag ends with when its answer is encoded: another representation needs another one (RFC 9110, section 8.8.3.3). */
const ENCODED_TAG = /-(?:gzip|br)"$/;

/** Compresses larger answers for callers that accept it. Streams of events stay as they are, so that each arrives when it happens. */
export async function compressAnswers(app: App): Promise<void> {
  await app.register(compress, {
    encodings: ["br", "gzip"],
    threshold: COMPRESS_FROM_BYTES,
    globalDecompression: false,
    brotliOptions: { params: { [constants.BROTLI_PARAM_QUALITY]: BROTLI_QUALITY } },
    zlibOptions: { level: GZIP_LEVEL },
  });
  // The plugin compresses in a hook of each route, after those of the whole service.
  app.addHook("onRoute", (route) => {
    route.onSend = [route.onSend ?? [], tagEncoded].flat();
  });
}

const tagEncoded: onSendHookHandler = (_request, reply, payload, done) => {
  const encoding = reply.getHeader("content-encoding");
  const etag = reply.getHeader("etag");
  if (typeof encoding === "string" && typeof etag === "string") {
    reply.header("ETag", `${etag.slice(0, -1)}-${encoding}"`);
  }
  done(null, payload);
};

/** The ETag of a record, however its answer was encoded. */
export function withoutEncoding(etag: string): string {
  return etag.replace(ENCODED_TAG, '"');
}
