/** Whether a media type, or what stands for none, is no text: reading it as text would spoil it. */
export function isBytes(type: string): boolean {
  return !/^text|^no |json$|xml$/.test(type);
}
