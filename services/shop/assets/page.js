import { Refused } from "./ask.js";
import { bitPage } from "./bit.js";
import { element, say } from "./element.js";
import { placePage } from "./place.js";
import { settingPage } from "./setting.js";

const KEY = "rimwise-key";
const PAGES = { bits: bitPage, places: placePage, settings: settingPage };

const main = document.getElementById("main");
const forget = document.getElementById("forget");

/** Counts what was asked to be shown: an answer that comes after something newer was asked is not shown. */
let turns = 0;

forget.addEventListener("click", () => {
  sessionStorage.removeItem(KEY);
  show();
});
// A page left open may have been overtaken: who comes back to it sees how things are now.
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "visible" && sessionStorage.getItem(KEY) !== null) show();
});
show();

/** Shows the page that the address asks for, or asks for a key first. */
async function show() {
  turns += 1;
  const turn = turns;
  const key = sessionStorage.getItem(KEY);
  forget.hidden = key === null;
  if (key === null)
    return askForKey(
      "This page shows records of the shop. Type a key of yours; it is kept until this tab is closed.",
    );
  const [kind, id] = location.pathname.split("/").slice(-2);
  say(main, element("p", { class: "soft" }, "Asking the shop …"));
  try {
    const shown = await PAGES[kind](key, decodeURIComponent(id));
    if (turn === turns) say(main, ...shown);
  } catch (error) {
    if (turn !== turns) return;
    if (error instanceof Refused && error.status === 401) {
      sessionStorage.removeItem(KEY);
      forget.hidden = true;
      askForKey("That key does not work here: it is mistyped, expired or revoked.");
    } else {
      say(
        main,
        element("h1", {}, "Nothing to show"),
        element(
          "p",
          {},
          error instanceof Refused
            ? error.message
            : "The service cannot be reached. Rely on nothing this page showed before.",
        ),
      );
    }
  }
}

function askForKey(words) {
  document.title = "Rimwise";
  const input = element("input", { id: "key", type: "password", autocomplete: "off", required: "" });
  const form = element(
    "form",
    {},
    element("label", { for: "key" }, words),
    input,
    element("button", {}, "Open"),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    sessionStorage.setItem(KEY, input.value.trim());
    show();
  });
  say(main, element("h1", {}, "Your key"), form);
  input.focus();
}
