import { Readable } from "node:stream";
import type { FastifyRequest } from "fastify";
import { type NewBit, NewBitSchema } from "../bits/schema.ts";
import type { App } from "../http/app-type.ts";
import { oneAtATime } from "../http/one-at-a-time.ts";
import { listRecordsRoute, readRoute } from "../http/read-routes.ts";
import { ref } from "../http/reference.ts";
import type { Doors } from "../http/routes.ts";
import { stampOf } from "../http/write.ts";
import { fieldFaults } from "../problems/from-ajv.ts";
import { COLUMN_NAMES } from "./columns.ts";
import { cutOff } from "./cut-off.ts";
import type { ReadBit } from "./decide.ts";
import { exportBits } from "./export-bits.ts";
import { FILE_ANSWER, FILE_BODY, formatOf, notAFile, takeFiles } from "./file-bodies.ts";
import { importBits } from "./import-bits.ts";
import { requireNew } from "./imported-before.ts";
import { imports } from "./kind.ts";
import {
  ExportQuery,
  IMPORT_SCHEMAS,
  ImportPageSchema,
  ImportQuery,
  ImportReportSchema,
  MEDIA_TYPES,
} from "./schema.ts";
import { MOST_UPLOAD_BYTES, MOST_UPLOAD_MIB, receiveUpload } from "./upload.ts";

/** A whole rack takes longer than one record. */
const TIME_LIMIT_MS = 10 * 60 * 1000;

/** Imports of the same bytes that are looked back at. */
const MOST_IMPORTS_OF_ONE_FILE = 50;

/** Compiled once for each route: looked up by this very object. */
const BIT_BODY = ref(NewBitSchema);

const INTERCHANGE = `A file holds what can be said of a bit, not what its history made of it: its state, hold, loan, place and use are no part of it, and stay as they are. The columns of a CSV, in any order: ${COLUMN_NAMES.join(", ")}. A line of NDJSON is a NewBit, with its \`id\` if it has one.`;

const IMPORT_DESCRIPTION = `${INTERCHANGE} Quantities are written as people write them ("3-1/2 in", "88.9 mm", "8,5 mm", "12 oz", "22,000 rpm"); a number alone is in the unit of its column's name, and what may mean two things is refused. Commas, semicolons or tabs part the cells of a CSV. A dry run shows every quantity as it was read, and is answered as the import would be: a file that is refused is a 422 with the report. A row with the \`id\` of a kept bit makes it what the row says, except for what has no column; one with another \`id\` makes a bit of that id; one without makes a new bit. UTF-8, up to ${MOST_UPLOAD_MIB} MiB, each row at most 64 KiB and 300 cells, and few empty rows. Importing an unchanged export changes nothing.`;

/** Bits out to files and in again. */
export function importRoutes(app: App, doors: Doors): void {
  for (const schema of IMPORT_SCHEMAS) app.addSchema(schema);
  exportRoute(app, doors);
  importRoute(app, doors);
  recordRoutes(app, doors);
}

function exportRoute(app: App, { answer }: Doors): void {
  app.get(
    "/v1/bits/export",
    {
      config: { scope: "bits:read", operation: "act", timeLimitMs: TIME_LIMIT_MS },
      exposeHeadRoute: false,
      schema: {
        operationId: "exportBits",
        tags: ["bits"],
        summary: "Export every bit as a file that imports again",
        description: `${INTERCHANGE} Numbers are in full precision. Before what a spreadsheet would take for a formula, at the start of a text or after a semicolon, tab or line end in it, stands an apostrophe, which the import takes away.`,
        querystring: ExportQuery,
        response: { 200: { description: "Every bit, in order of its id.", content: FILE_ANSWER } },
      },
    },
    async ({ query: { format } }, reply) =>
      reply
        .type(`${MEDIA_TYPES[format]}; charset=utf-8`)
        .header("Content-Disposition", `attachment; filename="bits.${format}"`)
        .send(exportBits(answer, format)),
  );
}

function importRoute(app: App, { answer, answerOnce, leases, write, now }: Doors): void {
  // Two imports at once could be the same file twice, and each would hold up the other.
  const run = oneAtATime(leases, "import-running", "Send this file again when it has ended.");
  takeFiles(app);
  app.post(
    "/v1/bits/import",
    {
      config: { scope: "bits:write", operation: "act", takesFiles: true, timeLimitMs: TIME_LIMIT_MS },
      bodyLimit: MOST_UPLOAD_BYTES,
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
    async (request, reply) => {
      const format = formatOf(request);
      if (!(request.body instanceof Readable)) throw notAFile();
      const { isRepeat, ...ask } = request.query;
      const upload = await receiveUpload(request.body);
      const { sha256 } = upload;
      let entered: string | undefined;
      const onEntered = (importId: string) => {
        entered = importId;
      };
      try {
        await answerOnce(
          request,
          reply,
          () =>
            run(async () => {
              if (!isRepeat) requireNew(await answer(imports.newest(MOST_IMPORTS_OF_ONE_FILE, { sha256 })));
              const stamp = stampOf(request, now());
              const parts = { answer, write, readBit: bitReader(request), stamp, now, onEntered };
              return importBits(upload, { format, ...ask }, parts);
            }),
          { format, sha256 },
        );
      } catch (error) {
        throw entered === undefined ? error : cutOff(error, entered);
      } finally {
        await upload.close();
      }
    },
  );
}

function recordRoutes(app: App, doors: Doors): void {
  const read = { scope: "bits:read", tag: "imports", of: imports } as const;
  listRecordsRoute(app, doors, {
    ...read,
    path: "/v1/imports",
    operationId: "listImports",
    summary: "List the files that changed the rack",
    page: ImportPageSchema,
  });
  readRoute(app, doors, {
    ...read,
    path: "/v1/imports/:importId",
    operationId: "getImport",
    summary: "Read what came of a file",
  });
}

/** Reads a bit as the body of a request is read. */
function bitReader(request: FastifyRequest): ReadBit {
  const validate = request.compileValidationSchema(BIT_BODY, "body");
  const isBit = (value: unknown): value is NewBit => validate(value) === true;
  return (value) => (isBit(value) ? { bit: value } : { faults: fieldFaults(validate.errors ?? [], "body") });
}
