import { searchProfile, wantedFrom } from "@rimwise/domain";
import { randomFrom } from "./fuzz/random.ts";
import { rackOf } from "./reference/search-rack.ts";
import { grazesSurface, pathLeftBy, randomCut } from "./reference/planted.ts";
const random = randomFrom(1);
const rack = rackOf(1000, random);
for (let c = 0; c < 15; c++) {
  let path; let cut;
  do { do cut = randomCut(random.of(rack), { work: "flat", face: random.of(["front","back"] as const) } as const, 19, random); while (!cut); path = pathLeftBy([cut], 19); } while (grazesSurface(path));
  if (c !== 1) continue;
  const wanted = wantedFrom(path);
  for (let i = 0; i < 25; i++) { const t0 = performance.now(); const found = searchProfile(wanted, rack, { toleranceMm: 0.1, setupsMax: 1 }); if (i % 6 === 0) console.log((performance.now()-t0).toFixed(0), found.oneSetup.length); }
}
