import { customType } from "drizzle-orm/sqlite-core";

/** A column that keeps a value as JSON text; a missing value is NULL and never the text "null". */
export function jsonColumn<Value>(name: string) {
  return customType<{ data: Value; driverData: string | null }>({
    dataType: () => "text",
    toDriver: (value) => (value === null || value === undefined ? null : JSON.stringify(value)),
    fromDriver: (text) => JSON.parse(text ?? "null"),
  })(name);
}

/** A column that keeps bytes as they are. */
export function bytesColumn(name: string) {
  return customType<{ data: Buffer; driverData: Buffer }>({ dataType: () => "blob" })(name);
}
