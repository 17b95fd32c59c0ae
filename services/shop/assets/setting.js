import { ask, askQuietly } from "./ask.js";
import { element, facts, mm, rpm, section, when } from "./element.js";

const SUPERVISION = {
  beside: "somebody in charge stands beside",
  "in-the-room": "somebody in charge is in the room",
  "on-call": "somebody in charge can be called",
};

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
  const isIssued = approval.state === "issued";
  const because = approval.lapse?.because ?? approval.withdrawal?.because;
  const { plan } = grounds.results[0];
  return [
    label ? element("img", { class: "code", alt: "QR code of this page", src: pictureOf(label) }) : null,
    element("h1", {}, approval.name),
    element(
      "p",
      { class: isIssued ? "state go" : "state stop" },
      isIssued ? "ISSUED" : `${approval.state.toUpperCase()}: do not use`,
    ),
    because ? element("p", {}, element("strong", {}, because)) : null,
    isIssued ? element("p", { class: "mark" }, markOf(approval.setting)) : null,
    facts([
      ["Bit", bit?.name ?? approval.bitId],
      ["Marked maximum", rpm(bit?.markedMaxRpm) ?? "none recorded: read it off the tool"],
      ["Router", router?.name ?? approval.routerId],
      ["Mounting", approval.mounting === "table" ? "in a table" : "handheld"],
      ["Ceiling", `${rpm(approval.setting.ceilingRpm)}, from ${approval.setting.bindingLimit}`],
      ["Supervision", SUPERVISION[approval.supervision] ?? approval.supervision],
      ["Only who showed", approval.skill],
      ["From", when(approval.validFrom)],
      ["Until", when(approval.validUntil)],
    ]),
    checkForm(key, approval),
    ...(isIssued ? grounds.results.flatMap(({ plan: each }) => woodPart(each)) : []),
    ...(isIssued
      ? section(
          "Mind",
          plan.findings.map(({ text }) => text),
        )
      : []),
    ...section(
      "At the machine",
      plan.precautions.map(({ text }) => text),
    ),
    element("p", {}, element("strong", {}, plan.advice)),
    element(
      "p",
      { class: "soft" },
      `${approval.id}; made from ${approval.inputDigest.slice(0, 23)}… by engine ${approval.engineVersion}`,
    ),
  ];
}

function markOf({ dialMark, rpm: speed }) {
  return dialMark === null ? rpm(speed) : `Dial at ${dialMark}: ${rpm(speed)}`;
}

function woodPart({ wood, passes, steps }) {
  const rows = passes.map(({ number, kind, heightMm, fenceMm, feedMPerMin, secondsPerEdge }) =>
    element(
      "tr",
      {},
      ...[
        `${number} ${kind}`,
        mm(heightMm),
        mm(fenceMm),
        `${feedMPerMin.toLocaleString()} m/min`,
        secondsPerEdge.map((each) => Math.round(each)).join(", "),
      ].map((text) => element("td", {}, text)),
    ),
  );
  const head = element(
    "tr",
    {},
    ...["Pass", "Height", "Fence", "Feed", "Seconds per edge"].map((text) => element("th", {}, text)),
  );
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

function checkForm(key, { bitId, routerId, mounting, setting }) {
  const person = element("input", { id: "person", autocomplete: "off", required: "" });
  const answer = element("div", { class: "answer", role: "status" });
  const form = element(
    "form",
    {},
    element("label", { for: "person" }, "May somebody run this now? Type the person's id."),
    person,
    element("button", {}, "Check"),
  );
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    answer.replaceChildren(
      ...(await answerOf(key, {
        personId: person.value.trim(),
        bitId,
        routerId,
        mounting,
        ...markAsked(setting),
      })),
    );
  });
  ask(key, "/v1/me").then(
    ({ personId = "" }) => {
      if (person.value === "") person.value = personId;
    },
    () => {},
  );
  return element("div", {}, form, answer);
}

function markAsked({ dialMark }) {
  return dialMark === null ? {} : { dialMark };
}

async function answerOf(key, asked) {
  try {
    const { isAllowed, reasons, supervision } = await ask(key, "/v1/checks", { ...asked, isRecorded: true });
    if (isAllowed)
      return [
        element("p", { class: "state go" }, "ALLOWED"),
        element("p", {}, SUPERVISION[supervision] ?? supervision),
      ];
    return [
      element("p", { class: "state stop" }, "NOT ALLOWED"),
      element("ul", {}, ...reasons.map(({ text }) => element("li", {}, text))),
    ];
  } catch (error) {
    return [
      element("p", { class: "state stop" }, "NOT ALLOWED"),
      element("p", {}, `It could not be checked: ${error.message}`),
    ];
  }
}

function pictureOf(svg) {
  return URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
}
