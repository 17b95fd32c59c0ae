/** Texts that break what was not made for them; a note as long as nobody means it. */
export const HOSTILE = {
  markup: `</title><script>alert(1)</script> & "3½" <b>`,
  "right to left": "לוח דלת \u202E gnp.exe",
  emoji: `🪵🪚 ${"👩‍🔧".repeat(30)}`,
  "one long word": "W".repeat(600),
  "ten thousand signs": "Hold the work down. ".repeat(500).trim(),
};
