import { ask, askAll, askQuietly, Refused } from "./ask.js";
import { element, facts, mm, picture, rpm, section, when, words } from "./element.js";
import { holdForm } from "./hold.js";

const TRIALS_SHOWN = 6;
const STATES = {
  "in-rack": "In the rack",
  "on-loan": "On loan",
  "at-sharpening": "At sharpening",
  held: "HELD: do not use",
  retired: "RETIRED: never use",
};

/** What somebody at the rack needs to know of a bit. */
export async function bitPage(key, id) {
  const path = encodeURIComponent(id);
  const bit = await askUnlessStudent(key, `/v1/bits/${path}`);
  if (bit === undefined) return studentsPage(key, id);
  const [home, place, loan, trials, photographs] = await Promise.all([
    bit.homePlaceId && askQuietly(key, `/v1/places/${encodeURIComponent(bit.homePlaceId)}`),
    bit.placeId && askQuietly(key, `/v1/places/${encodeURIComponent(bit.placeId)}`),
    bit.loanId && askQuietly(key, `/v1/loans/${encodeURIComponent(bit.loanId)}`),
    askAll(key, `/v1/speed-trials?bitId=${path}`),
    askAll(key, `/v1/photographs?bitId=${path}`),
  ]);
  document.title = bit.name;
  const stop = bit.retirement ?? bit.hold;
  return [
    element("h1", {}, bit.name),
    ...statesOf(bit, stop),
    stop ? element("p", {}, element("strong", {}, stop.reason)) : null,
    facts([
      ["Marked maximum", rpm(bit.markedMaxRpm) ?? "none recorded: read it off the tool"],
      [
        "Hand feed",
        bit.isHandFeedMarked === undefined
          ? undefined
          : bit.isHandFeedMarked
            ? "marked for it"
            : "not marked for it",
      ],
      ["Form", words(bit.form.kind)],
      ["Diameter", mm(bit.form.diameterMm)],
      ["Shank", mm(bit.shankDiameterMm)],
      ["Wings", bit.wings],
      ["Mass", bit.massG === undefined ? "not weighed" : `${bit.massG.toLocaleString()} g`],
      ["Belongs in", home?.name],
      ["Last seen in", place?.name],
      [isPast(loan?.dueAt) ? "OVERDUE since" : "Due back", when(loan?.dueAt)],
      ["Out for", loan?.job],
      [
        isPast(bit.inspectionDueAt) ? "Inspection OVERDUE since" : "Inspection due",
        when(bit.inspectionDueAt),
      ],
      ["Sharpened", when(bit.sharpenedAt)],
      ["Notes", bit.notes],
    ]),
    ...section("Latest speed trials", await lastTrials(key, trials)),
    ...(await pictures(key, photographs)),
    bit.retirement ? null : holdForm(key, id),
  ];
}

/** The bit, or undefined for a student, who does not see the rack. */
async function askUnlessStudent(key, path) {
  try {
    return await ask(key, path);
  } catch (error) {
    if (error instanceof Refused && error.status === 403) return undefined;
    throw error;
  }
}

/** What a student sees of a bit: the settings they may run it with, and how to take it out of use. */
async function studentsPage(key, id) {
  const settings = await askAll(key, `/v1/approvals?bitId=${encodeURIComponent(id)}&state=issued`);
  document.title = "Approved settings";
  const links = settings.map(({ id: settingId, name }) =>
    element("a", { href: `/settings/${encodeURIComponent(settingId)}` }, name),
  );
  return [
    element("h1", {}, "Approved settings"),
    settings.length === 0
      ? element("p", {}, "No setting of your courses is for this bit. Ask your instructor.")
      : null,
    ...section("For this bit", links),
    holdForm(key, id),
  ];
}

/** What is not where it should be is not said to be in the rack. */
function statesOf({ state, missingSince }, stop) {
  const missing = missingSince
    ? element("p", { class: "state stop" }, `MISSING since ${when(missingSince)}`)
    : null;
  if (missing !== null && state === "in-rack") return [missing];
  return [element("p", { class: stop ? "state stop" : "state" }, STATES[state] ?? state), missing];
}

function isPast(moment) {
  return moment !== undefined && new Date(moment) <= new Date();
}

async function lastTrials(key, trials) {
  const shown = trials
    .filter(({ setAside }) => setAside === undefined)
    .slice(-TRIALS_SHOWN)
    .reverse();
  const ids = [...new Set(shown.map(({ routerId }) => routerId))];
  const routers = await Promise.all(
    ids.map((id) => askQuietly(key, `/v1/routers/${encodeURIComponent(id)}`)),
  );
  const names = new Map(ids.map((id, index) => [id, routers[index]?.name ?? id]));
  return shown.map(({ rpm: speed, mark, outcome, triedAt, routerId }) => {
    const at = mark === undefined ? rpm(speed) : `${rpm(speed)} (mark ${mark})`;
    const how = outcome === "shook" ? element("strong", {}, "SHOOK") : "ran free";
    return element("span", {}, `${at} in ${names.get(routerId)}: `, how, `, ${when(triedAt)}`);
  });
}

async function pictures(key, photographs) {
  const shown = await Promise.all(
    photographs.map(async ({ id, caption = "" }) => {
      const content = await askQuietly(key, `/v1/photographs/${encodeURIComponent(id)}/content`);
      // One that was removed meanwhile is no reason to show nothing.
      if (content === undefined) return null;
      const bytes = Uint8Array.from(atob(content.base64), (sign) => sign.charCodeAt(0));
      const src = picture(bytes, content.mediaType);
      return element(
        "figure",
        {},
        element("img", { src, alt: caption || "Photograph of this bit" }),
        caption ? element("figcaption", { class: "soft" }, caption) : null,
      );
    }),
  );
  if (shown.every((each) => each === null)) return [];
  return [element("h2", {}, "Photographs"), element("div", { class: "photographs" }, ...shown)];
}
