import type { CodeModules, DaySetupDrawn } from "@rimwise/drawing";
import { create } from "qrcode";

export const CODE_OPENS = "https://shop.example/bits/bit_01a21d6f7faf72f790f77e36a2412ccf";

const { modules } = create(CODE_OPENS, { errorCorrectionLevel: "M" });

/** A code as long as those of records are. */
export const CODE: CodeModules = {
  opens: CODE_OPENS,
  size: modules.size,
  isDark: Array.from(modules.data, (module) => module === 1),
};

/** Set-ups of an invented day. */
export const DAY_SETUPS: readonly DaySetupDrawn[] = [2.5, undefined].map((mark, index) => ({
  bit: {
    form: { kind: "cove", diameterMm: 38.1, radiusMm: 12.7 },
    shankDiameterMm: 12.7,
    wings: 2,
  },
  bitName: "Cove",
  station: "Table router, in a table",
  mark,
  rpm: 12_000,
  cutterMm: 9.5,
  fenceMm: index === 0 ? 6.35 : undefined,
  parts: index + 1,
  cuts: "Rail",
  changeMin: 6,
  workMin: 20,
}));
