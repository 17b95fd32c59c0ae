import { callerOf } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import { idFilter, listRoute, readShownRoute, requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { createRoute, removeRoute } from "../http/write-routes.ts";
import { newId } from "../store/id.ts";
import { addPhotograph, MOST_OF_A_BIT, removePhotograph, requireSaidSize } from "./decide.ts";
import { asPhotograph, IMAGE_BODY, takeImages } from "./file-bodies.ts";
import { photographKind } from "./kind.ts";
import { photographs } from "./reads.ts";
import {
  MOST_BYTES,
  NewPhotographSchema,
  PHOTOGRAPH_SCHEMAS,
  PhotographContentSchema,
  PhotographPageSchema,
  PhotographSchema,
  shownPhotograph,
} from "./schema.ts";

const READ = { scope: "bits:read", tag: "photographs", of: photographs } as const;
const WRITE = { scope: "bits:write", tag: "photographs", of: photographs } as const;

/** The image in base64, and what stands around it. */
const BODY_LIMIT_BYTES = Math.ceil((MOST_BYTES * 4) / 3) + 4096;

export function photographRoutes(app: App, doors: Doors): void {
  for (const schema of PHOTOGRAPH_SCHEMAS) app.addSchema(schema);
  takeImages(app);

  listRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/photographs",
      operationId: "listPhotographs",
      summary: "List photographs of bits, without their bytes",
      page: PhotographPageSchema,
      filters: { bitId: idFilter("Of this bit.") },
    },
    ({ afterId, most }, { query: { bitId } }) => photographs.shown(afterId, most, bitId),
  );

  readShownRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/photographs/:photographId",
      operationId: "getPhotograph",
      summary: "Read about a photograph",
      answer: PhotographSchema,
    },
    function* (id) {
      const record = yield* photographs.find(id);
      return record && shownPhotograph(record);
    },
  );

  askRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/photographs/:photographId/content",
      operationId: "getPhotographContent",
      summary: "Read a photograph itself",
      answer: PhotographContentSchema,
    },
    function* ({ params: { photographId } }) {
      const found = yield* photographs.find(photographId);
      const { mediaType, bytes } = requireFound(photographKind, photographId, found);
      return { mediaType, base64: bytes.toString("base64") };
    },
  );

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/bits/:bitId/photographs",
      operationId: "createPhotograph",
      summary: `Add a photograph of a bit, at most ${MOST_OF_A_BIT} of each`,
      description:
        "As JSON, or as the image itself with its own type. Only the picture is kept, turned as it was: where and when it was taken, by whom and with what is removed.",
      body: NewPhotographSchema,
      examine: requireSaidSize,
      files: { content: IMAGE_BODY, config: { takesImages: true }, preValidation: asPhotograph },
      bodyLimit: BODY_LIMIT_BYTES,
      answer: PhotographSchema,
      location: ({ id }) => `${photographKind.path}/${id}`,
    },
    function* ({ params: { bitId }, body, request, at }) {
      requireFound(bits.kind, bitId, yield* bits.find(bitId));
      const kept = yield* photographs.countOf(bitId);
      const { personId } = callerOf(request);
      const id = newId(photographKind.idPrefix);
      const { record, changes } = addPhotograph(id, bitId, body, kept, personId, at);
      return { changes, answer: shownPhotograph(record) };
    },
  );

  removeRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/photographs/:photographId",
      operationId: "deletePhotograph",
      summary: "Remove a photograph",
      gone: "It is gone.",
    },
    (current) => [removePhotograph(current)],
  );
}
