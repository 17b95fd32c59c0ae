import { Refused } from "./ask.js";
import { bitPage } from "./bit.js";
import { element, say } from "./element.js";
import { placePage } from "./place.js";
import { settingPage } from "./setting.js";

const KEY = "rimwise-key";
const PAGES = { bits: bitPage, places: placePage, settings: settingPage };

const main = document.getElementById("main");
const forget = document.getElementById("forget");

forget.addEventListener("click", () => {
  sessionStorage.removeItem(KEY);
  show();
});
show();

/** Shows the page that the address asks for, or asks for a key first. */
async function show() {
  const key = sessionStorage.getItem(KEY);
  forget.hidden = key === null;
  if (key === null)
    return askForKey(
      "This page shows records of the shop. Type a key of yours; it is kept until this tab is closed.",
    );
  const [, kind, id] = location.pathname.split("/");
  say(main, element("p", { class: "soft" }, "Asking the shop …"));
  try {
    say(main, ...(await PAGES[kind](key, decodeURIComponent(id))));
  } catch (error) {
    if (error instanceof Refused && error.status === 401) {
      sessionStorage.removeItem(KEY);
      forget.hidden = true;
      askForKey("That key opens nothing here: it is mistyped, expired or revoked.");
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
  say(main, element("h1", {}, "A key, please"), form);
  input.focus();
}
