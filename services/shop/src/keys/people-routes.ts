import { callerOf, mayDo } from "../access/caller.ts";
import { requireKeyWithin, requirePersonWithin } from "../access/giving.ts";
import type { App } from "../http/app-type.ts";
import { type CreatedEach, createManyRoute } from "../http/create-many-route.ts";
import type { Doors } from "../http/routes.ts";
import { createPerson } from "../people/decide.ts";
import { personKind } from "../people/kind.ts";
import { newSalt } from "../people/salt.ts";
import { shownPerson } from "../people/schema.ts";
import { Problem } from "../problems/problem.ts";
import { newId } from "../store/id.ts";
import type { Question } from "../store/query.ts";
import { createKey } from "./decide.ts";
import { newKeyText } from "./key-text.ts";
import {
  NewPeopleAnswerSchema,
  NewPeopleSchema,
  type NewPersonWithKey,
  type PersonWithKey,
  shownKey,
} from "./schema.ts";

/** Several hundred people with notes. */
const BODY_LIMIT_BYTES = 1024 * 1024;

/** People with their keys: a class is entered in one request. */
export function manyPeopleRoutes(app: App, doors: Doors): void {
  createManyRoute(
    app,
    doors,
    {
      scope: "people:write",
      tag: "people",
      path: "/v1/people/batch",
      operationId: "createManyPeople",
      summary: "Enter many people at once, each with a key if asked",
      description:
        "A key's secret is shown this once. To create keys with them needs the scope keys:manage too. A narrowed key gives no more than it holds.",
      body: NewPeopleSchema,
      answer: NewPeopleAnswerSchema,
      bodyLimit: BODY_LIMIT_BYTES,
    },
    // biome-ignore lint/correctness/useYield: nothing has to be looked up for somebody new.
    function* ({ key, ...given }: NewPersonWithKey, { request, at }): Question<CreatedEach<PersonWithKey>> {
      requirePersonWithin(callerOf(request), undefined, { ...given, state: "active" });
      const person = createPerson(newId(personKind.idPrefix), given, newSalt(), at);
      if (key === undefined)
        return { changes: person.changes, answer: { person: shownPerson(person.record) } };
      if (!mayDo(callerOf(request), "keys:manage")) {
        throw new Problem("scope-missing", "To create keys with people takes a key that holds keys:manage.");
      }
      requireKeyWithin(callerOf(request), { ...key, personId: person.record.id });
      const text = newKeyText();
      const created = createKey({ ...key, personId: person.record.id }, text, at);
      return {
        changes: [...person.changes, ...created.changes],
        answer: { person: shownPerson(person.record), key: { ...shownKey(created.record), key: text.text } },
        onRepeat: new Problem(
          "secret-shown-once",
          "The people are entered. A key whose secret is lost is rotated or revoked.",
        ),
      };
    },
  );
}
