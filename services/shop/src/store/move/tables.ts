import { getTableName } from "drizzle-orm";
import { answers, events } from "../history-tables.ts";
import type { Kind } from "../kind.ts";
import type { MovedTable } from "./side.ts";

/** Everything that a shop's database holds, in the order in which it is copied: the history last, so that it is whole when it is there. */
export function movedTables(kinds: readonly Kind[]): readonly MovedTable[] {
  return [
    ...kinds.map(tableOfKind),
    { name: getTableName(answers), key: ["scope", "idempotency_key"] },
    { name: "derivations", key: ["name"] },
    { name: getTableName(events), key: ["sequence"] },
  ];
}

/** Rows come in the order in which the database gave them their numbers. */
function tableOfKind(kind: Kind): MovedTable {
  const named = Object.entries(kind.queryColumns ?? {});
  const columnOf = (wanted: string) => {
    const [name] = named.find(([, type]) => type === wanted) ?? [];
    return name === undefined ? undefined : kind.column(name).name;
  };
  const assigned = columnOf("assigned-number");
  const key = [columnOf("row-number") ?? assigned ?? "id"];
  return { name: kind.tableName, key, ...(assigned !== undefined && { assigned }) };
}
