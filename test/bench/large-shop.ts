import Database from "better-sqlite3";

/** How a column of a copied row is made from the row's number `i` and the row `t` it is copied from; others are copied. */
type Columns = Readonly<Record<string, string>>;

type Copied = { readonly table: string; readonly count: number; readonly columns: Columns };

/** How many of each there are: one bit, one router, one person and one course have the same few whatever the shop's size. */
export type Counts = ReturnType<typeof countsFor>;

/** Every five minutes somebody changes something: a shop with more history has had it for longer. */
const SECONDS_BETWEEN_EVENTS = 300;
const BITS_PER_PLACE = 20;
const STUDENTS_PER_COURSE = 10;
/** What one person does, they do in a row. */
const BURST = 20;
const ID_DIGITS = 32;

export function countsFor(bits: number) {
  const people = bits / 10;
  const courses = people / STUDENTS_PER_COURSE;
  return {
    bit: bits,
    place: bits / BITS_PER_PLACE,
    router: bits / 100,
    person: people,
    key: people,
    loan: bits,
    inspection: bits,
    sharpening: bits,
    trial: 2 * bits,
    reading: bits / 25,
    collet: bits / 50,
    runout: bits,
    use: 2 * bits,
    photo: bits / 100,
    plan: bits / 100,
    course: courses,
    enrolment: people,
    qualification: 2 * people,
    approval: 5 * courses,
    grounds: 5 * courses,
    check: people,
    checkpoint: bits / 100,
    event: bits,
  };
}

/** The id of the record with this number. */
export function idOf(prefix: string, number: number): string {
  return `${prefix}_${number.toString(16).padStart(ID_DIGITS, "0")}`;
}

/**
 * Fills a migrated database with many copies of what a small one holds, in plain SQL: other ids, names, places and
 * times, the same kinds of rows. The word index is built once at the end.
 */
export function fillShop(file: string, templateFile: string, counts: Counts): void {
  const database = new Database(file);
  database.pragma("synchronous = OFF");
  database.pragma("journal_mode = MEMORY");
  database.exec(`ATTACH '${templateFile}' AS template`);
  const triggers = dropTriggers(database);
  for (const copied of copies(counts)) copy(database, copied);
  for (const trigger of triggers) database.exec(trigger);
  database.exec("INSERT INTO bit_index (bit_index) VALUES ('rebuild')");
  database.pragma("journal_mode = WAL");
  database.close();
}

function dropTriggers(database: Database.Database): string[] {
  const triggers = database
    .prepare<[], { name: string; sql: string }>(
      "SELECT name, sql FROM main.sqlite_schema WHERE type = 'trigger'",
    )
    .all();
  for (const { name } of triggers) database.exec(`DROP TRIGGER main.${name}`);
  return triggers.map(({ sql }) => sql);
}

function copy(database: Database.Database, { table, count, columns }: Copied): void {
  const names = database
    .prepare<[], { name: string }>(`SELECT name FROM pragma_table_info('${table}')`)
    .all()
    .map(({ name }) => name);
  const values = names.map((name) => columns[name] ?? `t."${name}"`);
  database.exec(`
    CREATE TEMP TABLE sample AS SELECT row_number() OVER () - 1 AS place, * FROM template."${table}";
    CREATE UNIQUE INDEX temp.sample_by_place ON sample (place);
    WITH RECURSIVE numbers (i) AS (VALUES (0) UNION ALL SELECT i + 1 FROM numbers WHERE i < ${count - 1})
    INSERT INTO main."${table}" (${names.map((name) => `"${name}"`).join(", ")})
      SELECT ${values.join(", ")} FROM numbers
      JOIN sample AS t ON t.place = i % (SELECT count(*) FROM sample);
    DROP TABLE temp.sample;`);
}

function copies(counts: Counts): Copied[] {
  const { bit, router, person, course, plan } = counts;
  const id = (prefix: string, number = "i") => `'${prefix}_' || printf('%0${ID_DIGITS}x', ${number})`;
  const ofBit = { bit_id: id("bit", `i % ${bit}`) };
  const ofRouter = { router_id: id("router", `i % ${router}`) };
  const ofPerson = { person_id: id("person", `i % ${person}`) };
  const ofCourse = { course_id: id("course", `i % ${course}`) };
  const one = (prefix: keyof Counts, table: string, columns: Columns = {}): Copied => ({
    table,
    count: counts[prefix],
    columns: { id: id(prefix), ...columns },
  });
  const home = id("place", `i / ${BITS_PER_PLACE}`);
  const facetOf = (kind: string) => `'${kind}' || replace(${home}, '_', '')`;
  return [
    one("place", "places", {
      name: "t.name || ' ' || i",
      inside_id: `iif(i = 0, NULL, ${id("place", "i / 20")})`,
    }),
    one("router", "routers", { name: "t.name || ' ' || i" }),
    one("person", "people", { name: "t.name || ' ' || i" }),
    one("key", "keys", { key_sha256: "printf('%064x', i)", person_id: ofPerson.person_id, role: "NULL" }),
    one("bit", "bits", {
      number: "i + 1",
      name: "t.name || ' no' || i",
      words: "t.words || ' no' || i",
      facets: `t.facets || ' ' || ${facetOf("home")} || ' ' || ${facetOf("at")}`,
      home_place_id: home,
      place_id: home,
      state: "'in-rack'",
      loan_id: "NULL",
      missing_since: "iif(i % 200 = 0, t.created_at, NULL)",
      inspection_due_at: "iif(i % 50 = 0, '2020-01-01T00:00:00.000Z', '2099-01-01T00:00:00.000Z')",
      used_minutes: "i % 1000",
      reorder_reason: "iif(i % 100 = 0, 'retired', NULL)",
    }),
    one("loan", "loans", {
      ...ofBit,
      ...ofPerson,
      due_at: "iif(i % 100 = 0, '2020-01-01T00:00:00.000Z', '2099-01-01T00:00:00.000Z')",
      returned_at: "iif(i % 50 = 0, NULL, t.created_at)",
    }),
    one("inspection", "inspections", ofBit),
    one("sharpening", "sharpenings", ofBit),
    one("trial", "speed_trials", { ...ofBit, ...ofRouter }),
    one("reading", "dial_readings", ofRouter),
    one("collet", "collets", ofRouter),
    one("runout", "run_out_readings", { ...ofBit, ...ofRouter }),
    one("use", "uses", { ...ofBit, ...ofRouter, person_id: id("person", burst(person)) }),
    one("photo", "photographs", ofBit),
    one("plan", "plans"),
    one("course", "courses", { name: "t.name || ' ' || i" }),
    one("enrolment", "enrolments", { ...ofPerson, course_id: id("course", `i / ${STUDENTS_PER_COURSE}`) }),
    one("qualification", "qualifications", ofPerson),
    one("approval", "approvals", {
      ...{ ...ofCourse, ...ofBit, ...ofRouter },
      plan_id: id("plan", `i % ${plan}`),
      state: "'issued'",
    }),
    one("grounds", "approval_grounds", { approval_id: id("approval") }),
    one("check", "checks", { ...ofPerson, ...ofBit, ...ofRouter }),
    one("checkpoint", "checkpoints", { sequence: "i + 1" }),
    {
      table: "events",
      count: counts.event,
      columns: {
        // After the event that the new database has already.
        sequence: "i + 2",
        subject_id: ofBit.bit_id,
        by: id("key", burst(counts.key)),
        at: eventTime(counts.event),
        latest_at: eventTime(counts.event),
        hash: "printf('%064x', i + 2)",
        previous_hash: "printf('%064x', i + 1)",
      },
    },
  ];
}

function burst(count: number): string {
  return `(i / ${BURST}) % ${count}`;
}

/** Counted back from now: the last event has just happened. */
function eventTime(count: number): string {
  return `strftime('%Y-%m-%dT%H:%M:%fZ', 'now', '-' || ((${count} - i) * ${SECONDS_BETWEEN_EVENTS}) || ' seconds')`;
}
