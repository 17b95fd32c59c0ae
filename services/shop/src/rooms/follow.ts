import { settingsFollow } from "../approvals/follow.ts";
import { groundQueries } from "../approvals/reads.ts";
import { photographCount } from "../photographs/reads.ts";
import { photographsCounted } from "../photographs/room.ts";
import { placesKept } from "../places/in-use.ts";
import { placeQueries } from "../places/reads.ts";
import type { Follow } from "../store/commit.ts";
import type { Database } from "../store/database.ts";

/** What every room makes of changes inside their transaction: what must still hold, then what follows. */
export function whatFollows(database: Database): Follow {
  const mustHold = [placesKept(placeQueries(database)), photographsCounted(photographCount(database))];
  const follow = settingsFollow(groundQueries(database));
  return (changes, stamp) => {
    for (const require of mustHold) require(changes);
    return follow(changes, stamp);
  };
}
