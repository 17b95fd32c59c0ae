import { integer, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { bytesColumn, jsonColumn } from "../columns.ts";
import { kept } from "./kept.ts";

export const bits = sqliteTable("bits", {
  /** A lasting row number that the word index refers to; given by SQLite. */
  number: integer("number").primaryKey(),
  ...kept,
  id: text("id").notNull(),
  name: text("name").notNull(),
  notes: text("notes"),
  form: jsonColumn("form").notNull(),
  shankDiameterMm: real("shank_diameter_mm").notNull(),
  wings: integer("wings").notNull(),
  massG: real("mass_g"),
  runOutMm: real("run_out_mm"),
  stickOutMm: real("stick_out_mm"),
  markedMaxRpm: real("marked_max_rpm"),
  isHandFeedMarked: integer("is_hand_feed_marked", { mode: "boolean" }),
  toothMaterial: text("tooth_material"),
  purchasedOn: text("purchased_on"),
  cost: jsonColumn("cost"),
  smallestUsableDiameterMm: real("smallest_usable_diameter_mm"),
  homePlaceId: text("home_place_id"),
  inspectionIntervalDays: integer("inspection_interval_days"),
  inspectionIntervalM: real("inspection_interval_m"),
  state: text("state").notNull(),
  hold: jsonColumn("hold"),
  retirement: jsonColumn("retirement"),
  loanId: text("loan_id"),
  sentToSharpeningAt: text("sent_to_sharpening_at"),
  placeId: text("place_id"),
  missingSince: text("missing_since"),
  inspectedAt: text("inspected_at"),
  inspectionDueAt: text("inspection_due_at"),
  sharpenedAt: text("sharpened_at"),
  used: jsonColumn("used").notNull(),
  words: text("words").notNull(),
  facets: text("facets").notNull(),
  ceilingRpm: real("ceiling_rpm").notNull(),
  usedMinutes: real("used_minutes").notNull(),
  reorderReason: text("reorder_reason"),
  guideRpm: real("guide_rpm").notNull(),
});

export const places = sqliteTable("places", {
  ...kept,
  name: text("name").notNull(),
  kind: text("kind").notNull(),
  insideId: text("inside_id"),
  notes: text("notes"),
});

export const loans = sqliteTable("loans", {
  ...kept,
  bitId: text("bit_id").notNull(),
  personId: text("person_id").notNull(),
  routerId: text("router_id"),
  job: text("job"),
  dueAt: text("due_at").notNull(),
  returnedAt: text("returned_at"),
  returnedPlaceId: text("returned_place_id"),
});

export const inspections = sqliteTable("inspections", {
  ...kept,
  bitId: text("bit_id").notNull(),
  personId: text("person_id"),
  inspectedAt: text("inspected_at").notNull(),
  findings: jsonColumn("findings").notNull(),
  effect: text("effect").notNull(),
  notes: text("notes"),
});

export const sharpenings = sqliteTable("sharpenings", {
  ...kept,
  bitId: text("bit_id").notNull(),
  personId: text("person_id"),
  sharpenedAt: text("sharpened_at").notNull(),
  before: jsonColumn("before").notNull(),
  after: jsonColumn("after").notNull(),
  lifeEquivalentM: real("life_equivalent_m").notNull(),
  notes: text("notes"),
});

export const photographs = sqliteTable("photographs", {
  ...kept,
  bitId: text("bit_id").notNull(),
  personId: text("person_id"),
  mediaType: text("media_type").notNull(),
  caption: text("caption"),
  sha256: text("sha256").notNull(),
  bytes: bytesColumn("bytes").notNull(),
});
