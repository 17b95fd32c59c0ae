/** What base64url without padding stands for (RFC 4648). Throws for any other text, and for another way to write the same. */
export function bytesOf(part: string): Uint8Array<ArrayBuffer> {
  if (!/^[A-Za-z0-9_-]+$/.test(part)) throw new SyntaxError("not base64url without padding");
  const binary = atob(part.replaceAll("-", "+").replaceAll("_", "/"));
  const again = btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
  // The bits beyond the last byte must be zero (RFC 4648, section 3.5): each text has one encoding.
  if (again !== part) throw new SyntaxError("another way to write the same");
  return Uint8Array.from(binary, (character) => character.charCodeAt(0));
}
