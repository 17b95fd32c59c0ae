import { defineLimit } from "./limit.ts";

/** The speed marked on the tool. Whatever else says, it is never exceeded. */
export const markedMaximum = defineLimit({
  name: "marked-maximum",
  strength: "hard",
  formula: "n ≤ n max marked on the tool",
  source: "the tool's own marking; EN 847-1 and EN 847-2 require one (from memory)",
  figure: ({ bit: { markedMaxRpm } }) =>
    markedMaxRpm === undefined ? undefined : { rpm: markedMaxRpm, values: { markedMaxRpm } },
  raisedBy: () => undefined,
});
