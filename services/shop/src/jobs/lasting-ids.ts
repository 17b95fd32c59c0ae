import { hash } from "node:crypto";
import type { JobSetup, PlannedCut } from "@rimwise/domain";
import { canonicalText } from "../store/canonical.ts";
import type { ComputedCut } from "./computed.ts";

const ID_LENGTH = 16;

/**
 * The set-ups called by what is cut at them and how: computed again, one that is still the same is still called so, and an id that somebody
 * was given never comes to mean another.
 */
export function withLastingIds(
  setups: readonly JobSetup[],
  planned: readonly PlannedCut[],
  computed: readonly ComputedCut[],
): JobSetup[] {
  const places = computed.filter(({ own }) => own?.outcome.kind === "planned");
  const idOf = (setup: JobSetup) => {
    const {
      bitId,
      routerId,
      mounting,
      guide,
      heightMm,
      fenceMm = null,
      positionMm = null,
      mark = null,
      rpm,
    } = setup;
    const runs = setup.runs.map(({ cut, pass }) => {
      const place = places[cut];
      return [place?.part ?? 0, place?.cut ?? 0, pass, planned[cut]?.pieces ?? 0];
    });
    const said = { bitId, routerId, mounting, guide, heightMm, fenceMm, positionMm, mark, rpm, runs };
    return `setup_${hash("sha256", canonicalText(said)).slice(0, ID_LENGTH)}`;
  };
  const ids = new Map(setups.map((setup) => [setup.id, idOf(setup)]));
  const called = (id: string) => ids.get(id) ?? id;
  return setups.map((setup) => ({
    ...setup,
    id: called(setup.id),
    after: setup.after.map(({ setupId, rule }) => ({ setupId: called(setupId), rule })),
  }));
}
