import { ask, askQuietly } from "./ask.js";
import { checkForm } from "./check.js";
import { element, facts, picture, rpm, section, supervisionOf, when, words } from "./element.js";

/**
 * What a setting is for, and the question whether somebody may run it now. The dial's mark and the work are shown to whoever the
 * service has just said yes to, and to nobody before.
 */
export async function settingPage(key, id) {
  const path = encodeURIComponent(id);
  const approval = await ask(key, `/v1/approvals/${path}`);
  const [grounds, names, label] = await Promise.all([
    ask(key, `/v1/approvals/${path}/grounds`),
    namesOf(key, approval),
    askQuietly(key, `/v1/approvals/${path}/label`),
  ]);
  document.title = approval.name;
  const plans = grounds.results.map(({ plan }) => plan);
  const isUsable = approval.state === "issued" && new Date(approval.validFrom) <= new Date();
  const work = element("div", {});
  const showWork = (isAllowed) => work.replaceChildren(...(isAllowed ? workOf(approval, plans) : []));
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
    facts([
      ["Bit", names.bit],
      ["Marked maximum", rpm(names.markedMaxRpm) ?? "none recorded: read it off the tool"],
      ["Router", names.router],
      ["Mounting", approval.mounting === "table" ? "in a table" : "handheld"],
      ["Cleared for", words(approval.setting.clearance)],
      ["Supervision", supervisionOf(approval.supervision)],
      ["Only who showed", approval.skill],
      ["From", when(approval.validFrom)],
      ["Until", when(approval.validUntil)],
    ]),
    isUsable ? checkForm(key, approval, showWork) : null,
    work,
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
  const reason = lapse?.reason ?? withdrawal?.reason;
  return [
    reason ? element("p", {}, element("strong", {}, reason)) : null,
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

function markOf({ mark, rpm: speed }) {
  return mark === null ? rpm(speed) : `Dial at ${mark}: ${rpm(speed)}`;
}

function ceilingOf({ ceilingRpm, bindingLimit }) {
  return `${rpm(ceilingRpm)}, from ${words(bindingLimit)}`;
}

/** What a bit and a router are called. A student sees them on the sheet only, which states them too. */
async function namesOf(key, { id, state, bitId, routerId }) {
  const [bit, router] = await Promise.all([
    askQuietly(key, `/v1/bits/${encodeURIComponent(bitId)}`),
    askQuietly(key, `/v1/routers/${encodeURIComponent(routerId)}`),
  ]);
  if (bit && router) return { bit: bit.name, markedMaxRpm: bit.markedMaxRpm, router: router.name };
  const path = `/v1/approvals/${encodeURIComponent(id)}/sheet`;
  const sheet = state === "issued" ? await askQuietly(key, path) : undefined;
  const setting = sheet && statedIn(sheet.jws).setting;
  return {
    bit: setting?.bit.name ?? bitId,
    markedMaxRpm: setting?.bit.markedMaxRpm,
    router: setting?.router.name ?? routerId,
  };
}

/** What a sheet states. This page has it from the service itself and so does not check who signed. */
function statedIn(jws) {
  const [, payload] = jws.split(".");
  const bytes = Uint8Array.from(atob(payload.replaceAll("-", "+").replaceAll("_", "/")), (sign) =>
    sign.charCodeAt(0),
  );
  return JSON.parse(new TextDecoder().decode(bytes));
}

/** The mark to set, what to do, wood by wood, and what to mind in any of them. */
function workOf({ setting }, plans) {
  return [
    element("p", { class: "mark" }, markOf(setting)),
    facts([["Ceiling", ceilingOf(setting)]]),
    ...plans.flatMap(woodPart),
    ...section("Mind", eachOnce(plans.flatMap(({ findings }) => findings))),
    ...section("At the machine", eachOnce(plans.flatMap(({ precautions }) => precautions))),
    element("p", {}, element("strong", {}, plans[0].advice)),
    element(
      "p",
      { class: "soft" },
      `As of ${when(new Date())}. What a setting rests on can change at any time, and it lapses then: check before each use.`,
    ),
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

function eachOnce(said) {
  return [...new Set(said.map(({ text }) => text))];
}
