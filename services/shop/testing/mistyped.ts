/** A key whose last character is another one, whatever it was. */
export function mistyped(key: string): string {
  return key.slice(0, -1) + (key.endsWith("0") ? "1" : "0");
}
