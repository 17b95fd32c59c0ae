import { ask, askQuietly } from "./ask.js";
import { checkForm } from "./check.js";
import { element, facts, picture, rpm, section, supervisionOf, when, words } from "./element.js";

/** The sheet of a setting, to print and to work by, and the question whether somebody may run it now. */
export async function settingPage(key, id) {
  const path = encodeURIComponent(id);
  const approval = await ask(key, `/v1/approvals/${path}`);
  const [grounds, bit, router, label] = await Promise.all([
    ask(key, `/v1/approvals/${path}/grounds`),
    askQuietly(key, `/v1/bits/${encodeURIComponent(approval.bitId)}`),
    askQuietly(key, `/v1/routers/${encodeURIComponent(approval.routerId)}`),
    askQuietly(key, `/v1/approvals/${path}/label`),
  ]);
  document.title = approval.name;
  const plans = grounds.results.map(({ plan }) => plan);
  const isUsable = approval.state === "issued" && new Date(approval.validFrom) <= new Date();
  return [
    label
      ? element("img", {
          class: "label",
          alt: "Label with a QR code of this page",
          src: picture(label, "image/svg+xml"),
        })
      : null,
    element("h1", {}, approval.name),
    element("p", { class: isUsable ? "state go" : "state stop" }, stateOf(approval, isUsable)),
    ...endOf(approval),
    isUsable ? element("p", { class: "mark" }, markOf(approval.setting)) : null,
    facts([
      ["Bit", bit?.name ?? approval.bitId],
      ["Marked maximum", rpm(bit?.markedMaxRpm) ?? "none recorded: read it off the tool"],
      ["Router", router?.name ?? approval.routerId],
      ["Mounting", approval.mounting === "table" ? "in a table" : "handheld"],
      ["Ceiling", isUsable ? ceilingOf(approval.setting) : undefined],
      ["Supervision", supervisionOf(approval.supervision)],
      ["Only who showed", approval.skill],
      ["From", when(approval.validFrom)],
      ["Until", when(approval.validUntil)],
    ]),
    checkForm(key, approval),
    ...(isUsable ? workParts(plans) : []),
    element("p", {}, element("strong", {}, plans[0].advice)),
    element(
      "p",
      { class: "soft" },
      `As of ${when(new Date())}. What a setting rests on can change at any time, and it lapses then: check before each use.`,
    ),
    element(
      "p",
      { class: "soft" },
      `${approval.id}; made from ${approval.inputDigest.slice(0, 23)}… by engine ${approval.engineVersion}`,
    ),
  ];
}

function stateOf({ state, validFrom }, isUsable) {
  if (isUsable) return "ISSUED";
  return state === "issued"
    ? `NOT BEFORE ${when(validFrom)}: do not use`
    : `${state.toUpperCase()}: do not use`;
}

/** Why it ended, and what was issued in its place. */
function endOf({ lapse, withdrawal, replacedById }) {
  const because = lapse?.because ?? withdrawal?.because;
  return [
    because ? element("p", {}, element("strong", {}, because)) : null,
    replacedById
      ? element(
          "p",
          {},
          element(
            "a",
            { href: `../settings/${encodeURIComponent(replacedById)}` },
            "What was issued in its place",
          ),
        )
      : null,
  ];
}

function markOf({ dialMark, rpm: speed }) {
  return dialMark === null ? rpm(speed) : `Dial at ${dialMark}: ${rpm(speed)}`;
}

function ceilingOf({ ceilingRpm, bindingLimit }) {
  return `${rpm(ceilingRpm)}, from ${words(bindingLimit)}`;
}

/** What to do, wood by wood, and what to mind in any of them. */
function workParts(plans) {
  return [
    ...plans.flatMap(woodPart),
    ...section("Mind", toldOnce(plans.flatMap(({ findings }) => findings))),
    ...section("At the machine", toldOnce(plans.flatMap(({ precautions }) => precautions))),
  ];
}

function woodPart({ wood, passes, steps }) {
  const rows = passes.map(({ number, kind, heightMm, fenceMm, feedMPerMin, secondsPerEdge }) =>
    row("td", [
      `${number} ${kind}`,
      heightMm.toLocaleString(),
      fenceMm.toLocaleString(),
      feedMPerMin.toLocaleString(),
      secondsPerEdge.map(counted).join(", "),
    ]),
  );
  const head = row("th", ["Pass", "Height, mm", "Fence, mm", "Feed, m/min", "Seconds per edge"]);
  return [
    element("h2", {}, `Passes in ${wood.name}`),
    element("table", {}, element("thead", {}, head), element("tbody", {}, ...rows)),
    ...section(
      "Order of work",
      steps.map(({ text }) => text),
      "ol",
    ),
  ];
}

function row(cell, texts) {
  return element("tr", {}, ...texts.map((text) => element(cell, {}, text)));
}

/** Seconds as closely as a person counts them; a short edge never comes to none. */
function counted(seconds) {
  return seconds.toLocaleString(undefined, { maximumSignificantDigits: 2 });
}

function toldOnce(told) {
  return [...new Set(told.map(({ text }) => text))];
}
