import { approvalRoutes } from "../approvals/routes.ts";
import { sheetRoutes } from "../approvals/sheet-routes.ts";
import { checkRoutes } from "../checks/routes.ts";
import { courseAccess } from "../courses/access.ts";
import { courseRoutes } from "../courses/routes.ts";
import { courseViewRoutes } from "../courses/view-routes.ts";
import { enrolmentRoutes } from "../enrolments/routes.ts";
import type { App } from "../http/app-type.ts";
import { keyRoutes } from "../keys/routes.ts";
import { meRoutes } from "../me/routes.ts";
import { personRoutes } from "../people/routes.ts";
import { qualificationRoutes } from "../qualifications/routes.ts";
import type { Signer } from "../signing/signer.ts";
import type { Context } from "./context.ts";

/** People, and what they are taught and allowed. */
export function courseRooms(
  app: App,
  { all, sources: _, ...doors }: Context,
  signer: Signer,
  publicUrl: string,
): void {
  const access = courseAccess(all.enrolments);
  personRoutes(app, { ...all, ...doors, reads: all.people });
  keyRoutes(app, { ...all, ...doors, reads: all.keys });
  meRoutes(app);
  courseRoutes(app, { ...doors, reads: all.courses, access });
  courseViewRoutes(app, { ...all, ...doors, reads: all.courses, access });
  enrolmentRoutes(app, { ...all, ...doors, reads: all.enrolments, access });
  qualificationRoutes(app, { ...all, ...doors, reads: all.qualifications });
  approvalRoutes(app, { ...all, ...doors, reads: all.approvals, access });
  sheetRoutes(app, { ...all, ...doors, reads: all.approvals, access, signer, publicUrl });
  checkRoutes(app, { ...doors, reads: all.checks, sources: all });
}
