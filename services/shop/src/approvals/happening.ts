/** What a setting rests on, as a person calls it. */
const SUBJECTS: Readonly<Record<string, string>> = {
  bit: "The bit",
  router: "The router",
  course: "The course",
  "shop-policy": "The shop's policy",
  "speed-trial": "A speed trial",
  "run-out-reading": "A run-out reading",
  "dial-reading": "A dial reading",
  collet: "A collet",
  use: "A use",
  computation: "The computation",
};

/** What an event says, as a sentence: `bit.sharpened` is "The bit was sharpened." */
export function happeningOf(event: string): string {
  const [subject = "", happening = ""] = event.split(".");
  const done = happening === "created" ? "recorded" : happening.replaceAll("-", " ");
  return `${SUBJECTS[subject] ?? "What it rests on"} was ${done}.`;
}
