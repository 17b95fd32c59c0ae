import { expect, it } from "vitest";
import { type Message, messagesIn } from "./event-stream.ts";

async function read(...chunks: string[]): Promise<Message[]> {
  async function* stream() {
    yield* chunks;
  }
  const messages: Message[] = [];
  for await (const message of messagesIn(stream())) messages.push(message);
  return messages;
}

// WHATWG HTML, section 9.2.6: the examples of "interpreting an event stream", and its rules.
it.each<[string, string, Message[]]>([
  ["data over several lines", "data: YHOO\ndata: +2\ndata: 10\n\n", [{ id: "", data: "YHOO\n+2\n10" }]],
  [
    "comments, ids and an id that is taken back",
    ": test stream\n\ndata: first event\nid: 1\n\ndata:second event\nid\n\ndata:  third event\n",
    [
      { id: "1", data: "first event" },
      { id: "", data: "second event" },
    ],
  ],
  [
    "fields without a value",
    "data\n\ndata\ndata\n\ndata:",
    [
      { id: "", data: "" },
      { id: "", data: "\n" },
    ],
  ],
  ["at most one space before the value", "data:  test\n\n", [{ id: "", data: " test" }]],
  [
    "lines that end with CR",
    "id: 1\rdata: a\r\rdata: b\r\r.",
    [
      { id: "1", data: "a" },
      { id: "1", data: "b" },
    ],
  ],
  ["fields nobody knows", "event: bit.changed\nretry: 5\nmood: good\ndata: a\n\n", [{ id: "", data: "a" }]],
  ["a value with a colon", 'data: {"a": 1}\n\n', [{ id: "", data: '{"a": 1}' }]],
])("reads %s", async (_what, text, messages) => {
  expect(await read(text)).toEqual(messages);
});

it("reads the same however the stream is cut into chunks", async () => {
  const text = "id: 1\r\ndata: one\r\ndata: two\r\n\r\n: beat\r\n\r\nid: 2\r\ndata: three\r\n\r\n";
  const whole = await read(text);
  expect(whole).toEqual([
    { id: "1", data: "one\ntwo" },
    { id: "2", data: "three" },
  ]);
  expect(await read(...text)).toEqual(whole);
  for (let at = 1; at < text.length; at += 1) {
    expect(await read(text.slice(0, at), text.slice(at)), `cut at ${at}`).toEqual(whole);
  }
});
