import { posix } from "node:path";
import { importsOf, type SourceFile } from "./source-files.ts";

const SHOP = "services/shop/src/";

/** Folders that every room may use, lowest first: each knows only those before it, and no room. */
const FOUNDATION = ["store", "problems", "access", "http"];

/** Folders that may know every room: they compose the service. */
const ABOVE = ["rooms", "openapi", "commands"];

/** What each room's decisions, schemas and reads may import from beside the foundation. Its routes may know more, see below. */
const ROOMS_BELOW: Readonly<Record<string, readonly string[]>> = {
  bits: ["policy", "shop-policy"],
  collets: ["bits"],
  uses: ["bits", "collets", "shop-policy"],
  places: ["bits"],
  loans: ["bits", "reservations", "shop-policy"],
  reservations: ["bits"],
  photographs: [],
  inspections: ["bits", "uses"],
  sharpenings: ["bits", "uses", "inspections"],
  stock: ["bits", "plans"],
  labels: ["printing"],
  imports: ["bits", "places", "events", "shop-policy"],
  routers: [],
  "dial-readings": ["routers"],
  "run-out-readings": [],
  "speed-trials": ["bits", "routers"],
  policy: [],
  "shop-policy": ["policy"],
  "usable-routers": ["routers", "collets", "dial-readings", "shop-policy"],
  learned: ["bits", "routers", "run-out-readings", "speed-trials", "uses", "shop-policy", "usable-routers"],
  woods: [],
  outlines: [],
  plans: ["bits", "routers", "learned", "woods", "policy", "shop-policy"],
  "trial-proposals": ["learned", "plans"],
  panels: ["bits", "routers", "plans", "woods", "policy", "shop-policy"],
  joints: ["bits", "plans"],
  profiles: [
    "bits",
    "learned",
    "loans",
    "outlines",
    "plans",
    "policy",
    "reservations",
    "routers",
    "sharpenings",
    "shop-policy",
    "uses",
    "woods",
  ],
  jobs: [
    "approvals",
    "bits",
    "collets",
    "courses",
    "enrolments",
    "imports",
    "joints",
    "learned",
    "loans",
    "plans",
    "policy",
    "profiles",
    "reservations",
    "routers",
    "sharpenings",
    "shop-policy",
    "uses",
    "woods",
  ],
  pictures: [
    "approvals",
    "bits",
    "jobs",
    "joints",
    "learned",
    "panels",
    "places",
    "plans",
    "profiles",
    "routers",
    "shop-policy",
    "signing",
    "usable-routers",
  ],
  printing: [
    "approvals",
    "bits",
    "courses",
    "jobs",
    "learned",
    "people",
    "pictures",
    "places",
    "plans",
    "routers",
    "shop-policy",
    "usable-routers",
  ],
  people: [],
  keys: ["people"],
  me: [],
  enrolments: [],
  courses: ["enrolments", "policy"],
  qualifications: ["courses"],
  approvals: [
    "bits",
    "routers",
    "courses",
    "enrolments",
    "plans",
    "learned",
    "usable-routers",
    "policy",
    "shop-policy",
  ],
  "status-list": ["approvals", "signing"],
  checks: ["approvals", "bits", "routers", "loans", "people", "courses", "enrolments", "qualifications"],
  "class-views": ["approvals", "courses", "qualifications", "uses"],
  events: [],
  signing: [],
  checkpoints: ["events", "signing"],
  proof: ["events", "checkpoints", "signing"],
  backups: ["events", "signing"],
  health: [],
  pages: [],
};

/** The files that register a room's routes: they may use what any room decides and reads, but no other room's routes. */
const ROUTES = /routes\.ts$/;

/** Every import among the service's folders that points the wrong way, one sentence each. */
export function shopRoomFaults(files: readonly SourceFile[]): string[] {
  return files
    .filter(({ path }) => path.startsWith(SHOP) && path.endsWith(".ts") && !path.endsWith(".test.ts"))
    .flatMap((file) => importsOf(file).flatMap(({ specifier }) => faultOf(file.path, specifier) ?? []));
}

function faultOf(path: string, specifier: string): string | undefined {
  if (!specifier.startsWith(".")) return undefined;
  const target = posix.join(posix.dirname(path), specifier);
  const from = folderOf(path);
  const to = folderOf(target);
  // Files beside the folders are the process itself: what they hold everybody may know, and they may know everything.
  if (from === undefined || to === undefined || from === to || ABOVE.includes(from)) return undefined;
  const said = `${path} imports ${specifier}: ${from} is not above ${to}`;
  if (FOUNDATION.includes(from)) return isLower(to, from) ? undefined : said;
  if (FOUNDATION.includes(to)) return undefined;
  const below = ROOMS_BELOW[from];
  if (below === undefined) return `${path}: the room ${from} is not among the known ones`;
  if (ROUTES.test(path)) return ROUTES.test(target) || ABOVE.includes(to) ? said : undefined;
  return below.includes(to) ? undefined : said;
}

function isLower(one: string, other: string): boolean {
  return FOUNDATION.includes(one) && FOUNDATION.indexOf(one) < FOUNDATION.indexOf(other);
}

function folderOf(path: string): string | undefined {
  const [folder, ...rest] = path.slice(SHOP.length).split("/");
  return rest.length === 0 ? undefined : folder;
}

/** Rooms that are above themselves: what the table itself must never say. */
export function circularRooms(): string[] {
  const reaches = (from: string, wanted: string, seen: ReadonlySet<string>): boolean =>
    (ROOMS_BELOW[from] ?? []).some(
      (room) => room === wanted || (!seen.has(room) && reaches(room, wanted, new Set([...seen, room]))),
    );
  return Object.keys(ROOMS_BELOW).filter((room) => reaches(room, room, new Set()));
}
