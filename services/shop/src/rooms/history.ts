import { type KeptPlaces, keepNewestCheckpoint, keptCheckpoint } from "../checkpoints/kept.ts";
import type { MakeCheckpoint } from "../checkpoints/make.ts";
import { checkpointRoutes } from "../checkpoints/routes.ts";
import { eventRoutes } from "../events/routes.ts";
import { eventStreamRoutes } from "../events/stream-routes.ts";
import type { App } from "../http/app-type.ts";
import type { Doors } from "../http/routes.ts";
import type { StillAllowed } from "../keys/authenticate.ts";
import { recordProof } from "../proof/records.ts";
import { proofRoutes } from "../proof/routes.ts";
import { signingRoutes } from "../signing/routes.ts";
import type { Signer } from "../signing/signer.ts";
import type { Bell } from "../store/bell.ts";
import { KINDS } from "./kinds.ts";

type Parts = {
  readonly bell: Bell;
  readonly isStillAllowed: StillAllowed;
  readonly signer: Signer;
  readonly makeCheckpoint: MakeCheckpoint;
  readonly keptPlaces: KeptPlaces;
};

/** Who changed what, and the proof of it. */
export function historyRooms(app: App, doors: Doors, parts: Parts): void {
  const { bell, isStillAllowed, signer, makeCheckpoint, keptPlaces } = parts;
  const { answer } = doors;
  const kept = () => keptCheckpoint(keptPlaces.signingKeys, signer.verify);
  keepNewestCheckpoint(app, { answer, bell, ...keptPlaces, verify: signer.verify });
  eventRoutes(app, doors, KINDS);
  eventStreamRoutes(app, { answer, bell, isStillAllowed });
  checkpointRoutes(app, doors, makeCheckpoint);
  proofRoutes(app, { answer, verify: signer.verify, records: recordProof(KINDS), kept });
  signingRoutes(app, doors, { signer, makeCheckpoint });
}
