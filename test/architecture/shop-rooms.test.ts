import { describe, expect, it } from "vitest";
import { circularRooms, shopRoomFaults } from "./shop-rooms.ts";
import { sourceFiles } from "./source-files.ts";

describe("the rooms of the service", () => {
  it("import one way only", () => {
    expect(shopRoomFaults(sourceFiles([".ts"]))).toEqual([]);
  });

  it("are never above themselves", () => {
    expect(circularRooms()).toEqual([]);
  });
});

describe("the fence of the service finds", () => {
  it.each([
    ["a room in the store", "store/x.ts", 'import { bits } from "../bits/reads.ts";'],
    ["a room in the problems", "problems/x.ts", 'import type { Report } from "../imports/schema.ts";'],
    ["a room in what all routes share", "http/x.ts", 'import { keys } from "../keys/reads.ts";'],
    ["the routes' part in the store", "store/x.ts", 'import { etagOf } from "../http/conditional.ts";'],
    ["a room that is above", "bits/decide.ts", 'import { loanKind } from "../loans/kind.ts";'],
    ["another room's routes", "bits/routes.ts", 'import { loanRoutes } from "../loans/routes.ts";'],
    ["the composition in a room", "bits/routes.ts", 'import { KINDS } from "../rooms/kinds.ts";'],
    ["a room nobody knows", "misc/x.ts", 'import { bits } from "../bits/reads.ts";'],
  ])("%s", (_what, path, text) => {
    expect(shopRoomFaults([{ path: `services/shop/src/${path}`, text }])).toHaveLength(1);
  });

  it.each([
    ["a room below", "loans/decide.ts", 'import { bitAfter } from "../bits/decide.ts";'],
    ["what another room reads, for routes", "bits/routes.ts", 'import { places } from "../places/reads.ts";'],
    ["everything, for the composition", "rooms/x.ts", 'import { bitRoutes } from "../bits/routes.ts";'],
  ])("nothing against %s", (_what, path, text) => {
    expect(shopRoomFaults([{ path: `services/shop/src/${path}`, text }])).toEqual([]);
  });
});
