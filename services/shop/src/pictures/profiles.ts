import { formOutline, type SearchSetting, type WantedProfile } from "@rimwise/domain";
import { type DrawnUnits, type MouldingSetup, PICTURES, type Scene } from "@rimwise/drawing";
import type { BitRecord } from "../bits/schema.ts";
import type { Admit } from "../http/admission.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { profiles } from "../profiles/kind.ts";
import { fitBits, searchRack, USUAL_SETUPS_MAX, USUAL_TOLERANCE_MM, wantedIn } from "../profiles/search.ts";
import { ProfileSearchSchema } from "../profiles/search-schema.ts";
import { wantedOf } from "../profiles/shape.ts";
import { pictureRoute } from "./picture-route.ts";

export function profilePictureRoutes(app: App, doors: Doors, admit: Admit): void {
  pictureRoute(
    app,
    doors,
    {
      scope: "plans:read",
      tag: "profiles",
      path: "/v1/profiles/:profileId/picture",
      operationId: "getProfilePicture",
      summary: "A profile of the library in section",
      kinds: ["moulding"],
    },
    ({ params: { profileId }, query: { units } }) =>
      doors.answer(
        (function* () {
          const { name, shape } = requireFound(profiles.kind, profileId, yield* profiles.find(profileId));
          return PICTURES.moulding.draw({ wanted: wantedOf(shape, "/shape"), setups: [], name, units });
        })(),
      ),
  );

  pictureRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "profiles",
      path: "/v1/profiles/picture",
      operationId: "drawProfile",
      summary: "A profile in section, with the share of each set-up of the best answer that the rack gives",
      kinds: ["moulding"],
      body: ProfileSearchSchema,
    },
    ({ body, query: { units }, turns, request }) =>
      admit(request, async () => {
        const { answer } = doors;
        const { toleranceMm = USUAL_TOLERANCE_MM, setupsMax = USUAL_SETUPS_MAX } = body;
        const wanted = await answer(wantedIn(body));
        const rack = await fitBits({ answer, turns });
        const { oneSetup, together } = await searchRack(
          wanted,
          rack,
          { toleranceMm, setupsMax, notTakenMost: 0 },
          { turns },
        );
        const settings = oneSetup[0] === undefined ? (together[0] ?? []) : [oneSetup[0]];
        return mouldingScene(wanted, settings, rack, units);
      }),
  );
}

function mouldingScene(
  wanted: WantedProfile,
  settings: readonly SearchSetting[],
  rack: ReadonlyMap<string, BitRecord>,
  units: DrawnUnits,
): Scene {
  const setups = settings.flatMap((setting): MouldingSetup[] => {
    const bit = rack.get(setting.bitId);
    return bit === undefined ? [] : [{ setting, outline: formOutline(bit.form), bitName: bit.name }];
  });
  return PICTURES.moulding.draw({ wanted, setups, name: "", units });
}
