import type { App } from "../http/app-type.ts";
import { ReasonSchema } from "../http/reason.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute } from "../http/write-routes.ts";
import { endsManager, erasePerson } from "../people/decide.ts";
import { people } from "../people/kind.ts";
import { PersonErasureSchema, shownPerson } from "../people/schema.ts";
import { qualificationKind, qualifications } from "../qualifications/kind.ts";
import { nextVersion, replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { revokeKey, stillManaging } from "./decide.ts";
import { keys } from "./reads.ts";

/** Keys and qualifications of one person. */
const MOST_OF_A_PERSON = 2000;

/** What an erasure leaves, as whoever asks for it is shown. */
const STAYS = [
  "Loans, uses, checks, qualifications, enrolments, inspections and events stay under the person's id, which names nobody.",
  "Names and notes in backups made before stay there until those are deleted.",
  "Answers kept for repeated requests, and lines of the log, are gone when their time is over.",
  "If the database is PostgreSQL, its files hold what was erased until they are vacuumed, and its write-ahead log until that is used again.",
  "Free text in which somebody wrote a name, such as a bit's notes or a loan's job, is not searched.",
];

/** Erases who a person is. The history's proof stays whole: it holds a salted digest of their name, and the salt goes too. */
export function erasePersonRoute(app: App, doors: Doors): void {
  actRoute(
    app,
    doors,
    {
      scope: "people:write",
      tag: "people",
      of: people,
      path: "/v1/people/:personId/erase",
      operationId: "erasePerson",
      summary:
        "Erase a person's name and notes for good; their keys end, and what they did stays under their id",
      body: ReasonSchema,
      answer: PersonErasureSchema,
    },
    function* (current, { at }) {
      const { record, changes } = erasePerson(current, at);
      const answer = { person: shownPerson(record), stays: [...STAYS] };
      if (changes.length === 0) return { changes, answer };
      const expects = endsManager(current, record)
        ? stillManaging(yield* keys.otherManager({ personId: current.id, isForGood: true, at }))
        : [];
      const ended = [...(yield* endedKeys(current.id, at)), ...(yield* erasedNotes(current.id, at))];
      return { changes: [...changes, ...ended], expects, answer };
    },
  );
}

function* endedKeys(personId: string, at: string): Question<Change[]> {
  const own = yield* keys.page("", MOST_OF_A_PERSON, { personId });
  return own.flatMap((key) => [...revokeKey(key, false, undefined, at).changes]);
}

function* erasedNotes(personId: string, at: string): Question<Change[]> {
  const own = yield* qualifications.page("", MOST_OF_A_PERSON, { personId });
  return own.flatMap((current) => {
    if (current.notes === undefined) return [];
    const { notes: _, ...record } = nextVersion(current, at);
    return [replacement(qualificationKind, current, record, "notes-erased")];
  });
}
