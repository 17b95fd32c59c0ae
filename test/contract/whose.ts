/** What is somebody's own: to a member who is not that person it does not exist. */
const JOBS = [
  "getJob",
  "getJobChanges",
  "exportJob",
  "updateJob",
  "computeJob",
  "readyJob",
  "reopenJob",
  "endJob",
];
export const PERSONAL = [
  ...JOBS,
  "finishJobSetup",
  "getApproval",
  "getApprovalDifference",
  "getApprovalGrounds",
  "getApprovalLabel",
  "getApprovalSheet",
  "getCourse",
  "getLoan",
  "getQualification",
  "getStudentToday",
  "getUse",
  "returnLoan",
];

/** What every member of the shop may see. */
export const SHARED = [
  "getProfile",
  "getBit",
  "getBitEdge",
  "getBitLabel",
  "getCollet",
  "getImport",
  "getInspection",
  "getPhotograph",
  "getPhotographContent",
  "getPlace",
  "getPlaceContents",
  "getPlaceLabel",
  "getPlaceLabels",
  "getPlan",
  "getDialReading",
  "getRouter",
  "getRunOutReading",
  "getSharpening",
  "getSpeedTrial",
  "getWood",
  "holdBit",
  "proposeSpeedTrial",
];

/** Lists that hold what is somebody's own. */
export const PERSONAL_LISTS = [
  "listJobs",
  "listLoans",
  "listUses",
  "listCourses",
  "listEnrolments",
  "listQualifications",
  "listApprovals",
  "listChecks",
];
