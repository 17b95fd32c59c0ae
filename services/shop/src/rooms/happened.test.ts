import { expect, it } from "vitest";
import { bitKind } from "../bits/kind.ts";
import { colletKind } from "../collets/kind.ts";
import { dialReadingKind } from "../dial-readings/kind.ts";
import { runOutKind } from "../run-out-readings/kind.ts";
import { shopPolicyKind } from "../shop-policy/kind.ts";
import { trialKind } from "../speed-trials/kind.ts";
import type { Kind } from "../store/kind.ts";
import type { Change } from "../store/port.ts";
import { useKind } from "../uses/kind.ts";
import { happened } from "./happened.ts";

const KEPT = {
  id: "x_1",
  version: 1,
  createdAt: "2026-03-02T08:00:00.000Z",
  updatedAt: "2026-03-02T08:00:00.000Z",
};

function change(kind: Kind, happening: string, fields: object): Change {
  return {
    action: "create",
    kind,
    record: { ...KEPT, ...fields },
    event: { type: `${kind.type}.${happening}`, data: {} },
  };
}

it.each<[string, Change]>([
  ["The bit was sharpened.", change(bitKind, "sharpened", {})],
  ["Somebody logged a scorched cut.", change(useKind, "created", { outcomes: ["scorched"] })],
  [
    "Somebody logged a cut that chattered and a cut that tore out.",
    change(useKind, "created", { outcomes: ["chattered", "tore-out"] }),
  ],
  ["The bit shook in a speed trial.", change(trialKind, "created", { outcome: "shook" })],
  [
    "A speed trial was set aside.",
    change(trialKind, "set-aside", { outcome: "shook", setAside: { at: "", reason: "New bearing." } }),
  ],
  ["A run-out of 0.05 mm was measured.", change(runOutKind, "created", { runOutMm: 0.05 })],
  [
    "Mark 1 of the router was measured at 9,800 rpm.",
    change(dialReadingKind, "created", { mark: 1, rpm: 9800 }),
  ],
  ["A collet of the router was taken out of use.", change(colletKind, "held", {})],
  ["The shop's policy was changed.", change(shopPolicyKind, "changed", {})],
])("%s", (sentence, each) => expect(happened(each)).toBe(sentence));
