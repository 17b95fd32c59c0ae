import { real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { jsonColumn } from "../columns.ts";
import { kept } from "./kept.ts";

export const routers = sqliteTable("routers", {
  ...kept,
  name: text("name").notNull(),
  notes: text("notes"),
  minRpm: real("min_rpm").notNull(),
  maxRpm: real("max_rpm").notNull(),
  dial: jsonColumn("dial"),
  inputPowerW: real("input_power_w"),
  colletDiametersMm: jsonColumn("collet_diameters_mm"),
  mountings: jsonColumn("mountings"),
  dialReadAt: text("dial_read_at"),
});

export const collets = sqliteTable("collets", {
  ...kept,
  name: text("name").notNull(),
  routerId: text("router_id").notNull(),
  diameterMm: real("diameter_mm").notNull(),
  condition: text("condition").notNull(),
  hold: jsonColumn("hold"),
  notes: text("notes"),
});

export const dialReadings = sqliteTable("dial_readings", {
  ...kept,
  routerId: text("router_id").notNull(),
  personId: text("person_id"),
  readAt: text("read_at").notNull(),
  mark: jsonColumn("mark").notNull(),
  rpm: real("rpm").notNull(),
  instrument: text("instrument").notNull(),
});
