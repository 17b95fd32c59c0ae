import { callerOf } from "../access/caller.ts";
import { requirePersonWithin } from "../access/giving.ts";
import type { App } from "../http/app-type.ts";
import { listShownRoute, readShownRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { changeRoute, createRoute } from "../http/write-routes.ts";
import { stillManaging } from "../keys/decide.ts";
import { keys } from "../keys/reads.ts";
import { newId } from "../store/id.ts";
import { changePerson, createPerson, endsManager } from "./decide.ts";
import { people, personKind } from "./kind.ts";
import { newSalt } from "./salt.ts";
import {
  NewPersonSchema,
  PERSON_SCHEMAS,
  PersonChangeSchema,
  PersonPageSchema,
  PersonSchema,
  shownPerson,
} from "./schema.ts";

const READ = { scope: "people:read", tag: "people", of: people } as const;
const WRITE = { scope: "people:write", tag: "people", of: people, answer: PersonSchema } as const;

export function personRoutes(app: App, doors: Doors): void {
  for (const schema of PERSON_SCHEMAS) app.addSchema(schema);

  listShownRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/people",
      operationId: "listPeople",
      summary: "List the people of the shop",
      page: PersonPageSchema,
      filters: { role: "Those with this role.", state: "Those who are here, or who have left." },
    },
    shownPerson,
  );

  readShownRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/people/:personId",
      operationId: "getPerson",
      summary: "Read a person",
      answer: PersonSchema,
    },
    function* (id) {
      const record = yield* people.find(id);
      return record && shownPerson(record);
    },
  );

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/people",
      operationId: "createPerson",
      summary: "Enter somebody",
      description:
        "A narrowed key enters people who are not in charge; to enter an instructor or a manager it must hold all that they will.",
      body: NewPersonSchema,
    },
    ({ body, request, at }) => {
      requirePersonWithin(callerOf(request), undefined, { ...body, state: "active" });
      const { record, changes } = createPerson(newId(personKind.idPrefix), body, newSalt(), at);
      return { changes, answer: shownPerson(record) };
    },
  );

  changeRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/people/:personId",
      operationId: "updatePerson",
      summary: "Change a person's name or role, or say that they have left",
      description:
        "A change of role holds at once for every key of the person. A narrowed key gives nobody more than it holds.",
      body: PersonChangeSchema,
    },
    function* (current, { body, request, at }) {
      const { record, changes } = changePerson(current, body, at);
      requirePersonWithin(callerOf(request), current, record);
      const expects = endsManager(current, record)
        ? stillManaging(yield* keys.otherManager({ personId: current.id, isForGood: true, at }))
        : [];
      return { changes, expects, answer: shownPerson(record) };
    },
  );
}
