/** One message of a stream of server-sent events. */
export type Message = { readonly id: string; readonly data: string };

/**
 * The messages in a stream of server-sent events (WHATWG HTML, section 9.2.6), each as soon as it is whole. One that is cut off by
 * the end is dropped. Comments and the fields `event` and `retry` are passed over: the data say everything.
 */
export async function* messagesIn(chunks: AsyncIterable<string>): AsyncGenerator<Message, void, undefined> {
  let id = "";
  let data: string[] = [];
  for await (const line of linesIn(chunks)) {
    if (line === "") {
      if (data.length > 0) yield { id, data: data.join("\n") };
      data = [];
      continue;
    }
    const [, field = "", value = ""] = /^([^:]*):? ?(.*)$/s.exec(line) ?? [];
    if (field === "data") data.push(value);
    else if (field === "id" && !value.includes("\0")) id = value;
  }
}

/** Lines end with LF, CR or CRLF, which may come in two chunks. */
async function* linesIn(chunks: AsyncIterable<string>): AsyncGenerator<string, void, undefined> {
  let rest = "";
  for await (const chunk of chunks) {
    rest += chunk;
    // A CR at the end may be half of a CRLF: it waits for what comes next.
    const lines = rest.split(/\r\n|\n|\r(?!$)/);
    rest = lines.pop() ?? "";
    yield* lines;
  }
}
