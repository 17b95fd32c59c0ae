import { ask } from "./ask.js";
import { element, section, words } from "./element.js";

/** What is in a place, what should be, and what is missing. */
export async function placePage(key, id) {
  const path = encodeURIComponent(id);
  const place = await ask(key, `/v1/places/${path}`);
  const contents = await ask(key, `/v1/places/${path}/contents`);
  document.title = place.name;
  const away = contents.away.map(({ bitId }) => bitId);
  const ids = [...contents.here, ...contents.misplaced, ...contents.missing, ...away];
  const links = (bitIds) =>
    bitIds.map((id) => element("a", { href: `../bits/${encodeURIComponent(id)}` }, contents.names[id]));
  const isEmpty = ids.length === 0;
  return [
    element("h1", {}, place.name),
    element("p", { class: "soft" }, `A ${place.kind}.`),
    contents.missing.length > 0
      ? element("p", { class: "state stop" }, `MISSING: ${contents.missing.length}`)
      : null,
    isEmpty ? element("p", {}, "Nothing is kept here.") : null,
    ...section("Missing: should be here and was not seen", links(contents.missing)),
    ...section("Here", links(contents.here)),
    ...section("Here, but belongs elsewhere", links(contents.misplaced)),
    ...section(
      "Belongs here, and is away",
      contents.away.map(({ bitId, state }) => element("span", {}, ...links([bitId]), ` (${words(state)})`)),
    ),
    contents.isComplete ? null : element("p", {}, "There are more than this page shows."),
  ];
}
