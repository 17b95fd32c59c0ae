import { approvalLabelRoutes } from "../approvals/label-routes.ts";
import { approvalRoutes } from "../approvals/routes.ts";
import { sheetRoutes } from "../approvals/sheet-routes.ts";
import { checkRoutes } from "../checks/routes.ts";
import { classViewRoutes } from "../class-views/routes.ts";
import { courseRoutes } from "../courses/routes.ts";
import { enrolmentRoutes } from "../enrolments/routes.ts";
import { admission } from "../http/admission.ts";
import type { App } from "../http/app-type.ts";
import type { Doors } from "../http/routes.ts";
import type { ShopPlace } from "../http/shop-place.ts";
import { jobRoutes } from "../jobs/routes.ts";
import { erasePersonRoute } from "../keys/erase-routes.ts";
import { manyPeopleRoutes } from "../keys/people-routes.ts";
import { keyRoutes } from "../keys/routes.ts";
import { meRoutes } from "../me/routes.ts";
import { personRoutes } from "../people/routes.ts";
import { qualificationRoutes } from "../qualifications/routes.ts";
import { reservationRoutes } from "../reservations/routes.ts";
import type { Signer } from "../signing/signer.ts";
import { statusListRoutes, statusListUrl } from "../status-list/routes.ts";
import type { Store } from "../store/store.ts";

type Parts = { readonly signer: Signer; readonly mark: Store["mark"]; readonly place: ShopPlace };

/** People, what they are taught and allowed, and what they make. */
export function courseRooms(app: App, doors: Doors, { signer, mark, place }: Parts): void {
  personRoutes(app, doors);
  keyRoutes(app, doors);
  manyPeopleRoutes(app, doors);
  erasePersonRoute(app, doors);
  meRoutes(app, doors);
  courseRoutes(app, doors);
  classViewRoutes(app, doors);
  enrolmentRoutes(app, doors);
  qualificationRoutes(app, doors);
  approvalRoutes(app, doors);
  const { publicUrl } = place;
  sheetRoutes(app, doors, signer, statusListUrl(publicUrl));
  statusListRoutes(app, doors, { signer, mark, publicUrl });
  approvalLabelRoutes(app, doors, place);
  checkRoutes(app, doors);
  reservationRoutes(app, doors);
  jobRoutes(app, doors, admission());
}
