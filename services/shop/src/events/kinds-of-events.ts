import Type, { type TObject, type TProperties } from "typebox";
import { ref } from "../http/reference.ts";
import type { Kind } from "../store/kind.ts";
import { EVENT_HEAD } from "./head-schema.ts";
import { EventType } from "./types.ts";

type Component = TObject<TProperties> & { readonly $id?: string };

/** What is declared of the kinds of records, as far as events tell of it. */
export type EventKind = Pick<Kind, "type" | "noun" | "schema" | "shown" | "privateFields">;

/** The components of one kind's events: what they hold of its records, and an event for each sort of happening. */
export type EventsOfKind = { readonly fields: Component; readonly events: readonly Component[] };

/** The components of a kind's events. Which of a record's states `data` holds follows from what happened. */
export function eventsOfKind(kind: EventKind): EventsOfKind {
  const { type, noun } = kind;
  const fields = fieldsOf(kind);
  const types = EventType.schema.enum.filter((each) => each.startsWith(`${type}.`));
  const before = described(fields, `The ${noun} before, as far as it matters.`);
  const after = described(fields, `The ${noun} after, as far as it matters.`);
  const isNew = (each: string) => each === `${type}.created`;
  const isEnd = (each: string) => each === `${type}.removed`;
  const sorts: readonly Sort[] = [
    { sort: "Created", types: types.filter(isNew), data: { after }, said: "was entered" },
    {
      sort: "Changed",
      types: types.filter((each) => !isNew(each) && !isEnd(each)),
      data: { before: Type.Optional(before), after },
      said: "changed, or something was done with it",
    },
    { sort: "Removed", types: types.filter(isEnd), data: { before }, said: "was removed" },
  ];
  const events = sorts.filter((sort) => sort.types.length > 0).map((sort) => eventOf(kind, sort));
  return { fields, events };
}

/** Events of some types of a kind, with the data that these have. */
type Sort = {
  readonly sort: string;
  readonly types: readonly string[];
  readonly data: TProperties;
  readonly said: string;
};

function eventOf({ type, noun }: EventKind, { sort, types, data, said }: Sort): Component {
  const properties: TProperties = {
    ...EVENT_HEAD,
    type: Type.Enum([...types], { type: "string", description: "What happened." }),
    data: Type.Object(data, { description: "What changed.", additionalProperties: false }),
  };
  const description = `The ${noun} ${said}.`;
  return Type.Object(properties, {
    $id: `${nameOf(type)}${sort}`,
    description,
    additionalProperties: false,
  });
}

/**
 * What events hold of a kind's records, of private fields a digest alone. Open, because an event keeps the words of the version
 * that wrote it.
 */
function fieldsOf({ type, noun, schema, shown = schema, privateFields }: EventKind): Component {
  const hidden = new Set<string>([...privateFields, "salt"]);
  const open = Object.entries(shown.properties).filter(([name]) => !hidden.has(name));
  const digest = { privateDigest: Type.String({ description: "Digest of the private fields, salted." }) };
  const properties = { ...Object.fromEntries(open), ...(privateFields.length > 0 && digest) };
  return Type.Object(Type.Partial(Type.Object(properties)).properties, {
    $id: `${nameOf(type)}EventFields`,
    description: `Fields of the ${noun} that matter to an event.`,
    additionalProperties: true,
  });
}

function described(fields: Component, description: string) {
  return Type.Unsafe<Record<string, unknown>>({ ...ref(fields), description });
}

/** `dial-reading` as the first part of a component's name: `DialReading`. */
function nameOf(type: string): string {
  return type.replaceAll(/(?:^|-)(\w)/g, (_match, letter: string) => letter.toUpperCase());
}
