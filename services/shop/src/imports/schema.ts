import Type, { type Static } from "typebox";
import { hashField } from "../events/head-schema.ts";
import { idField, keptFields } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";

export const MODES = ["all-or-nothing", "row-by-row"] as const;
export const FORMATS = ["csv", "ndjson"] as const;

export type Mode = (typeof MODES)[number];
export type Format = (typeof FORMATS)[number];

/** The media type of each format. */
export const MEDIA_TYPES = { csv: "text/csv", ndjson: "application/x-ndjson" } as const satisfies Record<
  Format,
  string
>;

/** Faults listed one by one; of more, only their number. */
export const MOST_FAULTS_LISTED = 200;

/** The same of quantities as they were read. */
export const MOST_READINGS_LISTED = 1000;

/** Most rows of one file: all at once they hold up everybody else's changes, row by row only themselves. */
export const MOST_ROWS: Readonly<Record<Mode, number>> = { "all-or-nothing": 10_000, "row-by-row": 100_000 };

const closed = { additionalProperties: false } as const;
const count = (description: string) => Type.Integer({ minimum: 0, description });
const mode = Type.Enum([...MODES], {
  type: "string",
  description: `\`all-or-nothing\` changes nothing if one row cannot be taken, and takes up to ${MOST_ROWS["all-or-nothing"]} rows. \`row-by-row\` takes the good ones of up to ${MOST_ROWS["row-by-row"]}.`,
});

export const ImportQuery = Type.Object(
  {
    mode: { ...mode, default: MODES[0] },
    isDryRun: Type.Boolean({
      default: false,
      description:
        "Change nothing and report what would be, with every quantity as it was read. A file that would be refused is refused.",
    }),
    isRepeat: Type.Boolean({
      default: false,
      description:
        "Take a file that has made new bits before, which makes them once more. Not needed if every row has its `id`.",
    }),
  },
  closed,
);

export const ExportQuery = Type.Object(
  {
    format: Type.Enum([...FORMATS], {
      type: "string",
      default: FORMATS[0],
      description: "The file's format.",
    }),
  },
  closed,
);

const tally = {
  rows: count("Rows that were read, without the first line of a CSV."),
  created: count("Bits that were put on the rack."),
  changed: count("Kept bits that were changed."),
  unchanged: count("Kept bits that are already what their row says."),
  refused: count("Rows that cannot be taken."),
};

const FaultSchema = Type.Object(
  {
    line: Type.Integer({ minimum: 1, description: "The line its row begins on." }),
    column: Type.Optional(
      Type.String({
        description: "The column, or in NDJSON the JSON Pointer (RFC 6901). Default: the whole row.",
      }),
    ),
    message: Type.String({ description: "What is wrong with it." }),
    accepted: Type.String({ description: "What would be accepted." }),
    given: Type.Optional(Type.String({ description: "What stands there, shortened if it is long." })),
    nearest: Type.Optional(Type.String({ description: "The known name that comes nearest to it." })),
  },
  { $id: "ImportFault", description: "One thing in a file that cannot be taken.", ...closed },
);

const ReadingSchema = Type.Object(
  {
    line: Type.Integer({ minimum: 1, description: "The line its row begins on." }),
    column: Type.String({ description: "The column." }),
    given: Type.String({ description: "What stands there." }),
    read: Type.String({ description: "What it was read as." }),
    note: Type.Optional(Type.String({ description: "What else it might have been meant as." })),
  },
  { $id: "ImportReading", description: "How a quantity of a CSV was read.", ...closed },
);

export const ImportReportSchema = Type.Object(
  {
    importId: Type.Optional(
      Type.String({ description: "The record of this import. Absent if nothing was changed." }),
    ),
    mode,
    isDryRun: Type.Boolean({
      description: "Whether nothing was to be changed: the counts are what would be.",
    }),
    ...tally,
    faults: Type.Array(ref(FaultSchema), { description: `The first ${MOST_FAULTS_LISTED} faults, by line.` }),
    faultsLeftOut: count("Faults beyond those listed."),
    readings: Type.Optional(
      Type.Array(ref(ReadingSchema), {
        description: `Of a dry run: the first ${MOST_READINGS_LISTED} quantities of a CSV, each as it was read.`,
      }),
    ),
    readingsLeftOut: Type.Optional(count("Of a dry run: quantities beyond those listed.")),
    isComplete: Type.Boolean({
      description: "Whether the file was read to its end. If not, the last fault says why.",
    }),
  },
  { $id: "ImportReport", description: "What came of a file.", ...closed },
);

export const ImportSchema = Type.Object(
  {
    id: idField("import"),
    sha256: hashField("SHA-256 of the file."),
    format: Type.Enum([...FORMATS], { type: "string", description: "The file's format." }),
    mode: Type.Enum([...MODES], { type: "string", description: "How its rows were taken." }),
    state: Type.Enum(["running", "done"], {
      type: "string",
      description:
        "`done` when every row was looked at. A `running` one that does not end was cut off: some of its rows were taken.",
    }),
    ...tally,
    newIds: count("Created bits whose rows had no `id`: the same file again would make them once more."),
    ...keptFields,
  },
  { $id: "Import", description: "A file that changed the rack, and what came of it.", ...closed },
);

export const ImportPageSchema = pageSchema("ImportPage", ref(ImportSchema), "Imports, oldest first.");

/** The components this resource answers. */
export const IMPORT_SCHEMAS = [
  FaultSchema,
  ReadingSchema,
  ImportReportSchema,
  ImportSchema,
  ImportPageSchema,
];

export type ImportFault = Static<typeof FaultSchema>;
export type ImportReport = Static<typeof ImportReportSchema>;

export type ImportRecord = Static<typeof ImportSchema>;
