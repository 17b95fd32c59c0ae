import { Readable } from "node:stream";
import type { FastifyRequest } from "fastify";
import type { BitReads } from "../bits/reads.ts";
import { NewBitSchema } from "../bits/schema.ts";
import type { App } from "../http/app-type.ts";
import { listRoute, readRoute } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf, type Write } from "../http/write.ts";
import type { PlaceReads } from "../places/reads.ts";
import { fieldFaults } from "../problems/from-ajv.ts";
import type { RecordReads } from "../store/record-reads.ts";
import { COLUMN_NAMES } from "./columns.ts";
import type { CheckBit } from "./decide.ts";
import { exportBits } from "./export-bits.ts";
import { FILE_ANSWER, FILE_BODY, formatOf, notAFile, takeFiles } from "./file-bodies.ts";
import { importBits } from "./import-bits.ts";
import { requireNew } from "./imported-before.ts";
import { oneAtATime } from "./one-at-a-time.ts";
import {
  ExportQuery,
  IMPORT_SCHEMAS,
  ImportPageSchema,
  ImportQuery,
  ImportReportSchema,
  ImportSchema,
  MEDIA_TYPES,
} from "./schema.ts";
import { MOST_UPLOAD_MIB, receiveUpload } from "./upload.ts";

type Parts = {
  readonly reads: RecordReads<"import">;
  readonly bits: BitReads;
  readonly places: PlaceReads;
  readonly write: Write;
  readonly now: () => Date;
};

/** A whole rack takes longer than one record. */
const TIME_LIMIT_MS = 10 * 60 * 1000;

/** Imports of the same bytes that are looked back at. */
const MOST_IMPORTS_OF_ONE_FILE = 50;

/** Compiled once for each route: looked up by this very object. */
const BIT_BODY = ref(NewBitSchema);

const INTERCHANGE = `A file holds what can be said of a bit, not what its history made of it: its state, hold, loan, place and use are no part of it, and stay as they are. The columns of a CSV, in any order: ${COLUMN_NAMES.join(", ")}. A line of NDJSON is a NewBit, with its \`id\` where it has one.`;

const IMPORT_DESCRIPTION = `${INTERCHANGE} Quantities are written as people write them ("3-1/2 in", "88.9 mm", "12 oz", "22,000 rpm"); a number alone is in the unit of its column's name. A row with the \`id\` of a kept bit makes it what the row says, except for what has no column; one with another \`id\` makes a bit of that id; one without makes a new bit. UTF-8, up to ${MOST_UPLOAD_MIB} MiB, each row at most 64 KiB. Importing an unchanged export changes nothing.`;

/** Bits out to files and in again. */
export function importRoutes(app: App, parts: Parts): void {
  for (const schema of IMPORT_SCHEMAS) app.addSchema(schema);
  exportRoute(app, parts);
  importRoute(app, parts);
  recordRoutes(app, parts);
}

function exportRoute(app: App, { bits }: Parts): void {
  app.get(
    "/v1/bits/export",
    {
      config: { scope: "bits:read", operation: "act", timeLimitMs: TIME_LIMIT_MS },
      exposeHeadRoute: false,
      schema: {
        operationId: "exportBits",
        tags: ["bits"],
        summary: "Export every bit as a file that imports again",
        description: `${INTERCHANGE} Numbers are in full precision. A text that a spreadsheet would take for a formula begins with an apostrophe, which the import takes away.`,
        querystring: ExportQuery,
        response: { 200: { description: "Every bit, in order of its id.", content: FILE_ANSWER } },
      },
    },
    async ({ query: { format } }, reply) =>
      reply
        .type(`${MEDIA_TYPES[format]}; charset=utf-8`)
        .header("Content-Disposition", `attachment; filename="bits.${format}"`)
        .send(exportBits(bits, format)),
  );
}

function importRoute(app: App, { reads, bits, places, write, now }: Parts): void {
  const run = oneAtATime();
  takeFiles(app);
  app.post(
    "/v1/bits/import",
    {
      config: { scope: "bits:write", operation: "act", takesFiles: true, timeLimitMs: TIME_LIMIT_MS },
      onRequest: async (request) => void formatOf(request),
      schema: {
        operationId: "importBits",
        tags: ["bits"],
        summary: "Import bits from a file",
        description: IMPORT_DESCRIPTION,
        querystring: ImportQuery,
        body: { content: FILE_BODY },
        response: { 200: ref(ImportReportSchema) },
      },
    },
    async (request) => {
      const format = formatOf(request);
      if (!(request.body instanceof Readable)) throw notAFile();
      const { again, ...ask } = request.query;
      const upload = await receiveUpload(request.body);
      const { sha256 } = upload;
      try {
        return await run(async () => {
          if (!again) requireNew(await reads.newest(MOST_IMPORTS_OF_ONE_FILE, { sha256 }));
          const stamp = stampOf(request, now());
          const parts = { bits, places, write, check: checkOf(request), stamp, now };
          return importBits(upload, { format, ...ask }, parts);
        });
      } finally {
        await upload.close();
      }
    },
  );
}

function recordRoutes(app: App, { reads }: Parts): void {
  const shared = { scope: "bits:read", tag: "imports" } as const;
  listRoute(
    app,
    {
      ...shared,
      path: "/v1/imports",
      operationId: "listImports",
      summary: "List the files that changed the rack",
      page: ImportPageSchema,
    },
    (afterId, most) => reads.page(afterId, most),
  );
  readRoute(
    app,
    {
      ...shared,
      path: "/v1/imports/:importId",
      operationId: "getImport",
      summary: "Read what came of a file",
      record: ImportSchema,
      noun: "import",
      parameter: "importId",
    },
    reads.find,
  );
}

/** The same check that a bit in a request passes. */
function checkOf(request: FastifyRequest): CheckBit {
  const validate = request.compileValidationSchema(BIT_BODY, "body");
  return (value) => (validate(value) ? [] : fieldFaults(validate.errors ?? [], "body"));
}
