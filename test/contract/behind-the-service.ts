import Database from "better-sqlite3";

/** What somebody does who can open the shop's database without the service. One such file for each engine. */
export function behindTheService<Result>(
  { file }: { readonly file: string },
  act: (database: Database.Database) => Result,
): Result {
  const database = new Database(file);
  try {
    return act(database);
  } finally {
    database.close();
  }
}

/** The names of the tables that a shop's database has. */
export function tablesOf(database: Database.Database): string[] {
  return database
    .prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .pluck()
    .all();
}

/** Every row of every table, as text to search. */
export function everyRowOf(shop: { readonly file: string }): string {
  return behindTheService(shop, (database) =>
    tablesOf(database)
      .map((name) => JSON.stringify(database.prepare(`SELECT * FROM "${name}"`).all()))
      .join(),
  );
}
