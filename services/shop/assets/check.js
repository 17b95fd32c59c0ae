import { ask } from "./ask.js";
import { element, supervisionOf } from "./element.js";

/** The question whether somebody may run a setting now, with the service's answer under it. `show` learns each answer. */
export function checkForm(key, { bitId, routerId, mounting, setting }, show) {
  const person = element("input", { id: "person", autocomplete: "off", required: "" });
  const answer = element("div", { class: "answer", role: "status" });
  const form = element(
    "form",
    {},
    element("label", { for: "person" }, "May somebody run this now? Type the person's id."),
    person,
    element("button", {}, "Check and show the setting"),
  );
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const asked = { personId: person.value.trim(), bitId, routerId, mounting, ...markAsked(setting) };
    // An earlier answer must not stand while a new one is fetched.
    show(false);
    answer.replaceChildren(element("p", { class: "soft" }, "Asking the shop …"));
    const { isAllowed, parts } = await answerOf(key, asked);
    answer.replaceChildren(...parts);
    show(isAllowed);
  });
  ask(key, "/v1/me").then(
    ({ personId = "" }) => {
      if (person.value === "") person.value = personId;
    },
    () => {},
  );
  return element("div", {}, form, answer);
}

function markAsked({ mark }) {
  return mark === null ? {} : { mark };
}

async function answerOf(key, asked) {
  try {
    const { isAllowed, reasons, supervision } = await ask(key, "/v1/checks", { ...asked, isRecorded: true });
    if (isAllowed) {
      const whom = `For ${asked.personId}, now. Supervision: ${supervisionOf(supervision)}.`;
      return { isAllowed, parts: [element("p", { class: "state go" }, "ALLOWED"), element("p", {}, whom)] };
    }
    return refused(element("ul", {}, ...reasons.map(({ text }) => element("li", {}, text))));
  } catch (error) {
    return refused(element("p", {}, `It could not be checked: ${error.message}`));
  }
}

function refused(why) {
  return { isAllowed: false, parts: [element("p", { class: "state stop" }, "NOT ALLOWED"), why] };
}
