import { sql } from "drizzle-orm";
import { all, given, type Question, recordQuery } from "../store/query.ts";
import { qualificationKind } from "./kind.ts";
import type { QualificationRecord } from "./schema.ts";

const { column, table } = qualificationKind;

/** Of what is alike the best score, and of equal ones the latest: what lies behind them makes no difference. */
const counting = recordQuery(qualificationKind, (rows) =>
  rows.where(sql`${column("id")} IN (
    SELECT id FROM (
      SELECT id, ROW_NUMBER() OVER (
        PARTITION BY kind, course_id, skill ORDER BY COALESCE(score_percent, 0) DESC, given_at DESC) AS place
      FROM ${table}
      WHERE person_id = ${given("personId")} AND withdrawn IS NULL AND given_at <= ${given("at")}
        AND (expires_at IS NULL OR expires_at > ${given("at")})
    ) AS ranked WHERE place = 1)`),
);

/** What counts for a person at a moment, however much there is of them: one of each kind, course and skill. */
export function qualificationsCounting(personId: string, at: string): Question<QualificationRecord[]> {
  return all(counting, { personId, at });
}
