import type { Policy } from "@rimwise/domain";
import Type from "typebox";
import type { BitRecord } from "../bits/schema.ts";
import { hasCutItsMetres } from "../bits/standing.ts";
import type { App } from "../http/app-type.ts";
import { daysAfter } from "../http/moment.ts";
import { notACursor } from "../http/paging.ts";
import { listRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { people } from "../people/kind.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { type After, stock } from "./reads.ts";
import {
  BitSetPageSchema,
  DuePageSchema,
  HeldPageSchema,
  ReorderPageSchema,
  STOCK_SCHEMAS,
  UsedPageSchema,
} from "./schema.ts";
import { bitSets } from "./sets.ts";

/** A year ahead is as far as a shop plans. */
const MOST_DAYS_AHEAD = 366;

/** Between the value a page goes on from and the bit that had it. */
const SEPARATOR = "~";

export function stockRoutes(app: App, doors: Doors): void {
  for (const schema of STOCK_SCHEMAS) app.addSchema(schema);
  const common = { scope: "stock:read", tag: "stock" } as const;

  listRoute(
    app,
    doors,
    {
      ...common,
      path: "/v1/stock/due",
      operationId: "listDueBits",
      summary: "Which bits are due for inspection, now or within so many days",
      page: DuePageSchema,
      filters: {
        withinDays: Type.Integer({
          minimum: 0,
          maximum: MOST_DAYS_AHEAD,
          default: 0,
          description: "Those that fall due within so many days too. Default: those that are due now.",
        }),
      },
    },
    function* ({ afterId, most }, { query: { withinDays }, at }) {
      const bits = yield* stock.due(daysAfter(at, withinDays), placeIn(afterId), most);
      const policy = yield* shopPolicy();
      return bits.map((bit) => {
        const dueAt = bit.inspectionDueAt ?? bit.createdAt;
        return { id: cursorOf(dueAt, bit), bit, dueAt, reason: becauseOf(bit, dueAt > at, policy) };
      });
    },
  );

  listRoute(
    app,
    doors,
    {
      ...common,
      path: "/v1/stock/held",
      operationId: "listHeldBits",
      summary: "Which bits are held, since when, why and by whom",
      page: HeldPageSchema,
    },
    function* ({ afterId, most }) {
      const shown = [];
      for (const bit of yield* stock.held(afterId, most)) shown.push(yield* heldStock(bit));
      return shown;
    },
  );

  listRoute(
    app,
    doors,
    {
      ...common,
      path: "/v1/stock/most-used",
      operationId: "listMostUsedBits",
      summary: "Which bits are used most",
      page: UsedPageSchema,
    },
    function* ({ afterId, most }) {
      const bits = yield* stock.mostUsed(minutesIn(afterId), most);
      return bits.map((bit) => {
        const { minutes, metres } = bit.used;
        return { id: cursorOf(String(minutes), bit), bit, minutes, metres };
      });
    },
  );

  listRoute(
    app,
    doors,
    {
      ...common,
      path: "/v1/stock/reorder",
      operationId: "listBitsToReorder",
      summary: "Which bits to reorder, and why",
      page: ReorderPageSchema,
    },
    function* ({ afterId, most }) {
      const found = yield* stock.toReorder(afterId, most);
      return found.map(({ record, reason }) => ({ id: record.id, bit: record, reason }));
    },
  );

  listRoute(
    app,
    doors,
    {
      ...common,
      path: "/v1/stock/sets",
      operationId: "listBitSets",
      summary: "Sets of bits that belong together, and which were sharpened apart",
      page: BitSetPageSchema,
    },
    function* ({ afterId, most }) {
      const sets = yield* bitSets(afterId, most);
      return sets.map((set) => ({ id: set.setName, ...set }));
    },
  );
}

function* heldStock(bit: BitRecord) {
  const { since = bit.updatedAt, reason = "", by, isByStaff = true } = bit.hold ?? {};
  const person = by === undefined ? undefined : yield* people.find(by);
  return { id: bit.id, bit, since, reason, by: by ?? null, name: person?.name ?? null, isByStaff };
}

function becauseOf(bit: BitRecord, isAhead: boolean, policy: Policy): string {
  if (isAhead) return "Its days between inspections will be over then.";
  return hasCutItsMetres(bit, policy)
    ? `It has cut ${Math.round(bit.used.metresSinceInspection)} m since it was last looked at.`
    : "Its days between inspections are over.";
}

function cursorOf(value: string, { id }: BitRecord): string {
  return `${value}${SEPARATOR}${id}`;
}

/** Where a page goes on from; undefined for the first one. */
function placeIn(cursor: string): After<string> | undefined {
  if (cursor === "") return undefined;
  const [value, bitId] = cursor.split(SEPARATOR);
  if (value === undefined || bitId === undefined) throw notACursor();
  return { value, bitId };
}

function minutesIn(cursor: string): After<number> | undefined {
  const from = placeIn(cursor);
  if (from === undefined) return undefined;
  const value = Number(from.value);
  if (Number.isNaN(value)) throw notACursor();
  return { ...from, value };
}
