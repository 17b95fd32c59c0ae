/** Whether a media type is no text: reading it as text would spoil it. */
export function isBytes(type: string): boolean {
  return !/^text|json$|xml$/.test(type);
}
