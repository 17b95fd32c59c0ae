import type { Database as Sqlite } from "better-sqlite3";
import { type Column, getTableColumns, getTableName } from "drizzle-orm";
import { bitQueryColumns } from "../bits/query-columns.ts";
import type { Change } from "./port.ts";
import type { Records, RecordType } from "./records.ts";
import { QUERY_COLUMNS, RECORD_TABLES } from "./tables.ts";

type Writer = {
  /** `queryColumns` are made from the record where they are not given. */
  readonly insert: (record: object, queryColumns?: object) => void;
  /** Writes the fields that changed, or all where that is not known. */
  readonly replace: (record: object, changed?: readonly string[], queryColumns?: object) => void;
  readonly remove: (id: string) => void;
  readonly currentVersion: (id: string) => number | undefined;
};

export type Writers = Readonly<Record<RecordType, Writer>>;

/** SQLite's own: a row keeps the number it was given. */
const ROW_NUMBER = "number";

/** The prepared statements that write each kind of record. */
export function recordWriters(sqlite: Sqlite): Writers {
  const writer = (type: RecordType) => writerOf(sqlite, RECORD_TABLES[type]);
  return {
    bit: withQueryColumns(writer("bit"), bitQueryColumns),
    router: writer("router"),
    person: writer("person"),
    key: writer("key"),
    place: writer("place"),
    plan: writer("plan"),
    loan: writer("loan"),
    inspection: writer("inspection"),
    sharpening: writer("sharpening"),
    "speed-trial": writer("speed-trial"),
    "dial-reading": writer("dial-reading"),
    collet: writer("collet"),
    "run-out-reading": writer("run-out-reading"),
    use: writer("use"),
    photograph: writer("photograph"),
    checkpoint: writer("checkpoint"),
    "shop-policy": writer("shop-policy"),
    course: writer("course"),
    enrolment: writer("enrolment"),
    qualification: writer("qualification"),
    approval: writer("approval"),
    lapse: writer("lapse"),
    grounds: writer("grounds"),
    check: writer("check"),
    import: writer("import"),
  };
}

/** Applies one change. Its expected version has been checked in the same transaction. */
export function applyChange(writers: Writers, change: Change): void {
  const writer = writers[change.type];
  switch (change.action) {
    case "create":
      writer.insert(change.record, change.queryColumns);
      break;
    case "replace":
      writer.replace(change.record, change.changed, change.queryColumns);
      break;
    case "amend":
      writer.replace({ ...change.fields, id: change.id }, Object.keys(change.fields));
      break;
    case "remove":
      writer.remove(change.id);
      break;
  }
}

/** Writes with each record the columns that only its queries need. */
function withQueryColumns(writer: Writer, columnsOf: (record: Records["bit"]) => object): Writer {
  const whole = (record: object, queryColumns: object = columnsOf(Object(record))) =>
    Object.assign({}, record, queryColumns);
  return {
    ...writer,
    insert: (record, queryColumns) => writer.insert(whole(record, queryColumns)),
    replace: (record, changed, queryColumns) =>
      writer.replace(whole(record, queryColumns), changed && [...changed, ...QUERY_COLUMNS]),
  };
}

function writerOf(sqlite: Sqlite, table: (typeof RECORD_TABLES)[RecordType]): Writer {
  const name = getTableName(table);
  const columns = Object.entries<Column>(getTableColumns(table)).filter(([field]) => field !== ROW_NUMBER);
  const names = columns.map(([, column]) => `"${column.name}"`);
  const insert = sqlite.prepare(
    `INSERT INTO ${name} (${names.join(", ")}) VALUES (${names.map(() => "?").join(", ")})`,
  );
  const updates = new Map<string, ReturnType<typeof updateOf>>();

  function updateOf(fields: readonly string[] | undefined) {
    const written = fields === undefined ? columns : columns.filter(([field]) => fields.includes(field));
    const set = written.map(([, column]) => `"${column.name}" = ?`).join(", ");
    return { statement: sqlite.prepare(`UPDATE ${name} SET ${set} WHERE id = ?`), written };
  }

  const remove = sqlite.prepare(`DELETE FROM ${name} WHERE id = ?`);
  const version = sqlite.prepare<[string], number>(`SELECT version FROM ${name} WHERE id = ?`).pluck();
  return {
    insert: (record) => void insert.run(driverValues(columns, record)),
    replace: (record, changed) => {
      const key = changed?.join() ?? "";
      const update = updates.get(key) ?? updateOf(changed);
      updates.set(key, update);
      update.statement.run(...driverValues(update.written, record), Reflect.get(record, "id"));
    },
    remove: (id) => void remove.run(id),
    currentVersion: (id) => version.get(id),
  };
}

function driverValues(columns: readonly (readonly [string, Column])[], record: object): unknown[] {
  return columns.map(([field, column]) => {
    const value: unknown = Reflect.get(record, field) ?? null;
    return value === null ? null : column.mapToDriverValue(value);
  });
}
