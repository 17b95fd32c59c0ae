import { real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { jsonColumn } from "../columns.ts";
import { kept } from "./kept.ts";

export const speedTrials = sqliteTable("speed_trials", {
  ...kept,
  bitId: text("bit_id").notNull(),
  routerId: text("router_id").notNull(),
  personId: text("person_id"),
  triedAt: text("tried_at").notNull(),
  mark: jsonColumn("mark"),
  rpm: real("rpm").notNull(),
  outcome: text("outcome").notNull(),
  vibrationMmPerS: real("vibration_mm_per_s"),
  runOutMm: real("run_out_mm"),
  notes: text("notes"),
  setAside: jsonColumn("set_aside"),
});

export const runOutReadings = sqliteTable("run_out_readings", {
  ...kept,
  bitId: text("bit_id").notNull(),
  routerId: text("router_id").notNull(),
  colletId: text("collet_id"),
  personId: text("person_id"),
  readAt: text("read_at").notNull(),
  runOutMm: real("run_out_mm").notNull(),
  instrument: text("instrument").notNull(),
});

export const uses = sqliteTable("uses", {
  ...kept,
  bitId: text("bit_id").notNull(),
  routerId: text("router_id").notNull(),
  planId: text("plan_id"),
  colletId: text("collet_id"),
  personId: text("person_id"),
  woodId: text("wood_id").notNull(),
  doneAt: text("done_at").notNull(),
  metres: real("metres").notNull(),
  minutes: real("minutes").notNull(),
  outcomes: jsonColumn("outcomes").notNull(),
  notes: text("notes"),
});

export const plans = sqliteTable("plans", {
  ...kept,
  name: text("name"),
  request: jsonColumn("request").notNull(),
  plan: jsonColumn("plan").notNull(),
});
