import { ask } from "./ask.js";
import { element } from "./element.js";

/** How anybody takes a bit out of use: dropped, chipped or in doubt, until somebody in charge has looked at it. */
export function holdForm(key, id) {
  const reason = element("input", { id: "because", autocomplete: "off", required: "", minlength: "3" });
  const answer = element("div", { class: "answer", role: "status" });
  const form = element(
    "form",
    {},
    element(
      "label",
      { for: "because" },
      "Dropped, chipped or in doubt? Say what happened and take it out of use.",
    ),
    reason,
    element("button", {}, "Hold this bit"),
  );
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    answer.replaceChildren(element("p", { class: "soft" }, "Telling the shop …"));
    answer.replaceChildren(...(await answerOf(key, id, reason.value.trim())));
  });
  return element("div", {}, form, answer);
}

async function answerOf(key, id, reason) {
  try {
    const { hold } = await ask(key, `/v1/bits/${encodeURIComponent(id)}/hold`, { reason });
    return [element("p", { class: "state stop" }, "HELD: do not use"), element("p", {}, hold.reason)];
  } catch (error) {
    return [
      element("p", { class: "state stop" }, "NOT RECORDED"),
      element("p", {}, `${error.message} Do not use it; tell somebody in charge.`),
    ];
  }
}
