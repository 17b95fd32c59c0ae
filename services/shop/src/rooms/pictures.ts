import { admission } from "../http/admission.ts";
import type { App } from "../http/app-type.ts";
import type { Doors } from "../http/routes.ts";
import { approvalPictureRoutes } from "../pictures/approvals.ts";
import { bitPictureRoutes } from "../pictures/bits.ts";
import { jobPictureRoutes } from "../pictures/jobs.ts";
import { jointPictureRoutes } from "../pictures/joints.ts";
import { panelPictureRoutes } from "../pictures/panels.ts";
import { placePictureRoutes } from "../pictures/places.ts";
import { planPictureRoutes } from "../pictures/plans.ts";
import { profilePictureRoutes } from "../pictures/profiles.ts";
import { routerPictureRoutes } from "../pictures/routers.ts";
import type { Signer } from "../signing/signer.ts";

/** What is looked at. Register after the rooms whose schemas the requests are made of. */
export function pictureRooms(app: App, doors: Doors, signer: Signer): void {
  const admit = admission();
  bitPictureRoutes(app, doors);
  planPictureRoutes(app, doors);
  routerPictureRoutes(app, doors);
  placePictureRoutes(app, doors);
  jointPictureRoutes(app, doors);
  panelPictureRoutes(app, doors);
  profilePictureRoutes(app, doors, admit);
  approvalPictureRoutes(app, doors, signer);
  jobPictureRoutes(app, doors, admit);
}
