import { verifySheet } from "@rimwise/client";
import { isInForce, type Model } from "./model.ts";
import { WOOD_ID } from "./scene.ts";
import type { World } from "./world.ts";

const SECOND_MS = 1000;

/**
 * Takes a sheet of every setting in force that has none yet, and checks all that were ever taken as a machine without the service
 * would: each is valid exactly as long as its setting is in force. Throws otherwise.
 */
export async function sheetsHold(world: World, model: Model): Promise<void> {
  const read = async (url: string) => (await world.ask({ method: "GET", url, key: world.managerKey })).body;
  for (const approval of model.approvals) {
    if (!isInForce(model, approval) || world.sheets.has(approval.id)) continue;
    world.sheets.set(approval.id, (await read(`/v1/approvals/${approval.id}/sheet`)).jws);
  }
  if (world.sheets.size === 0) return;
  const keys = await read("/.well-known/jwks.json");
  const { jws: status } = await read("/v1/approvals/status");
  for (const approval of model.approvals) {
    const sheet = world.sheets.get(approval.id);
    if (sheet === undefined) continue;
    const { bitId, routerId, mark } = approval;
    const verdict = await verifySheet(sheet, {
      ...{ keys, status, at: new Date(model.nowMs) },
      expected: { bitId, routerId, mark, woodId: WOOD_ID, mounting: "table" },
    });
    // A sheet states its time in whole seconds: within one of them it may end before its setting.
    const isAtAnEnd = [approval.validFromMs, approval.validUntilMs].some(
      (moment) => Math.abs(model.nowMs - moment) < SECOND_MS,
    );
    if (verdict.isValid !== isInForce(model, approval) && !isAtAnEnd)
      throw new Error(
        `the sheet of ${approval.id}, which is ${approval.state}, is ${verdict.isValid ? "valid" : verdict.reasons.join(", ")}`,
      );
  }
}
