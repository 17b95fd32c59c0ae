import { ask, askQuietly } from "./ask.js";
import { element, facts, mm, rpm, section, when } from "./element.js";

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
  const bit = await ask(key, `/v1/bits/${path}`);
  const [home, place, loan, trials, photographs] = await Promise.all([
    bit.homePlaceId && askQuietly(key, `/v1/places/${encodeURIComponent(bit.homePlaceId)}`),
    bit.placeId && askQuietly(key, `/v1/places/${encodeURIComponent(bit.placeId)}`),
    bit.loanId && askQuietly(key, `/v1/loans/${encodeURIComponent(bit.loanId)}`),
    askQuietly(key, `/v1/speed-trials?bitId=${path}&limit=200`),
    askQuietly(key, `/v1/photographs?bitId=${path}`),
  ]);
  document.title = bit.name;
  const isStopped = bit.hold !== undefined || bit.retirement !== undefined;
  return [
    element("h1", {}, bit.name),
    element("p", { class: isStopped ? "state stop" : "state" }, STATES[bit.state] ?? bit.state),
    isStopped ? element("p", {}, element("strong", {}, (bit.retirement ?? bit.hold).because)) : null,
    bit.missingSince
      ? element("p", { class: "state stop" }, `MISSING since ${when(bit.missingSince)}`)
      : null,
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
      ["Form", bit.form.kind.replaceAll("-", " ")],
      ["Diameter", mm(bit.form.diameterMm)],
      ["Shank", mm(bit.shankDiameterMm)],
      ["Wings", bit.wings],
      ["Mass", bit.massG === undefined ? "not weighed" : `${bit.massG.toLocaleString()} g`],
      ["Belongs in", home?.name],
      ["Last seen in", place?.name],
      ["Due back", when(loan?.dueAt)],
      ["Out for", loan?.job],
      ["Inspection due", when(bit.inspectionDueAt)],
      ["Sharpened", when(bit.sharpenedAt)],
      ["Notes", bit.notes],
    ]),
    ...section("Speed trials", lastTrials(trials?.data ?? [])),
    ...(await pictures(key, photographs?.data ?? [])),
  ];
}

function lastTrials(trials) {
  return trials
    .filter(({ setAside }) => setAside === undefined)
    .slice(-TRIALS_SHOWN)
    .map(
      ({ rpm: speed, mark, outcome, triedAt }) =>
        `${rpm(speed)}${mark === undefined ? "" : ` (mark ${mark})`}: ${outcome === "shook" ? "SHOOK" : "ran free"}, ${when(triedAt)}`,
    );
}

async function pictures(key, photographs) {
  if (photographs.length === 0) return [];
  const shown = await Promise.all(
    photographs.map(async ({ id, caption = "" }) => {
      const { mediaType, base64 } = await ask(key, `/v1/photographs/${encodeURIComponent(id)}/content`);
      const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
      const src = URL.createObjectURL(new Blob([bytes], { type: mediaType }));
      return element("img", { src, alt: caption || "Photograph of this bit" });
    }),
  );
  return [element("h2", {}, "Photographs"), element("div", { class: "photographs" }, ...shown)];
}
