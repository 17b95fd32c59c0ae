import { describe, expect, it, onTestFinished, vi } from "vitest";
import { answering, problem, READ, send } from "../testing/scripted-service.ts";
import type { Operation } from "./operation.ts";

const EXPORT: Operation = { ...READ, answers: ["text/csv"] };
const headers = { "content-type": "text/csv; charset=utf-8" };

/** An answer whose parts are given one by one, and what became of it. */
function arriving() {
  const cancelled = vi.fn();
  let parts: ReadableStreamDefaultController<Uint8Array> | undefined;
  const body = new ReadableStream<Uint8Array>({
    start: (controller) => {
      parts = controller;
    },
    cancel: cancelled,
  });
  const give = (text: string) => parts?.enqueue(new TextEncoder().encode(text));
  return {
    answer: new Response(body, { headers }),
    give,
    end: () => parts?.close(),
    break: (e: Error) => parts?.error(e),
    cancelled,
  };
}

async function streamOf(answer: Response, options: Parameters<typeof send>[2] = {}) {
  const { fetch, requests } = answering(answer);
  const stream: unknown = await send(fetch, EXPORT, { retries: 0, ...options, asStream: true });
  if (!(stream instanceof ReadableStream)) throw new Error("no stream");
  return { reader: stream.getReader(), request: requests[0] };
}

const textOf = ({ value }: { value?: unknown }) =>
  value instanceof Uint8Array ? new TextDecoder().decode(value) : value;

describe("a file that is read as it arrives", () => {
  it("is given before it has ended", async () => {
    const { answer, give, end } = arriving();
    const { reader } = await streamOf(answer);
    give("name\n");
    expect(textOf(await reader.read())).toBe("name\n");
    give("A\n");
    expect(textOf(await reader.read())).toBe("A\n");
    end();
    expect((await reader.read()).done).toBe(true);
  });

  it("breaks if the connection does", async () => {
    const broken = arriving();
    const { reader } = await streamOf(broken.answer);
    broken.break(new TypeError("terminated"));
    await expect(reader.read()).rejects.toMatchObject({
      name: "ConnectionError",
      cause: { message: "terminated" },
    });
  });

  it("breaks if nothing comes for as long as an attempt may take, however long the whole takes", async () => {
    vi.useFakeTimers();
    onTestFinished(() => void vi.useRealTimers());
    const { answer, give } = arriving();
    const { reader, request } = await streamOf(answer, { timeoutMs: 100 });
    for (const part of ["a", "b", "c"]) {
      const read = reader.read();
      await vi.advanceTimersByTimeAsync(80);
      give(part);
      expect(textOf(await read)).toBe(part);
    }
    const read = expect(reader.read()).rejects.toMatchObject({ name: "TimeoutError", timeoutMs: 100 });
    await vi.advanceTimersByTimeAsync(101);
    await read;
    expect(request?.signal.aborted).toBe(true);
    expect(vi.getTimerCount()).toBe(0);
  });

  it("ends with the caller's reason, and with whoever reads no further", async () => {
    const giving = new AbortController();
    const first = await streamOf(arriving().answer, { signal: giving.signal });
    const gone = new Error("gone home");
    const read = expect(first.reader.read()).rejects.toBe(gone);
    giving.abort(gone);
    await read;
    const second = await streamOf(arriving().answer);
    await second.reader.cancel();
    expect(second.request?.signal.aborted).toBe(true);
  });

  it("is refused as anything else is", async () => {
    const { fetch } = answering(problem(403, "forbidden"));
    await expect(send(fetch, EXPORT, { asStream: true })).rejects.toMatchObject({
      status: 403,
      code: "forbidden",
    });
  });
});
