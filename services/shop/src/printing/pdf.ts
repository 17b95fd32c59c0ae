import { Worker } from "node:worker_threads";
import type { Turns } from "../http/turns.ts";
import { FONT_FILES } from "../pictures/fonts.ts";
import type { Pages } from "./pages.ts";
import { pdfPage } from "./pdf-nodes.ts";

const PROGRAM = new URL("../../workers/pdf.js", import.meta.url);

const LANGUAGE = "en";

/** What the thread says of one document. */
type Said =
  | { readonly id: number; readonly bytes: Uint8Array }
  | { readonly id: number; readonly error: string };

type Waiting = { readonly resolve: (bytes: Uint8Array) => void; readonly reject: (error: Error) => void };

type Thread = { readonly worker: Worker; readonly waiting: Map<number, Waiting> };

let running: Thread | undefined;
let lastId = 0;

/**
 * Pages as a tagged PDF with the fonts that ship with the service. The same pages are the same bytes. Letters are shaped and fonts cut down in
 * a thread of its own, which takes longer than a request may; here pages are only made, with turns between them. Rejects when the thread
 * fails, and with what `turns` throws when nobody waits any more.
 */
export async function pdfOf({ title, pages }: Pages, turns: Turns): Promise<Buffer> {
  const thread = threadAtWork();
  lastId += 1;
  const id = lastId;
  const post = (message: object) => thread.worker.postMessage({ id, ...message });
  const done = new Promise<Uint8Array>((resolve, reject) => thread.waiting.set(id, { resolve, reject }));
  // It may fail while pages are still made; whoever waits below hears of it.
  done.catch(() => {});
  thread.worker.ref();
  try {
    post({ kind: "begin", title, language: LANGUAGE });
    for await (const page of pages) {
      await turns();
      post({ kind: "page", page: pdfPage(page) });
      await turns();
    }
    post({ kind: "end" });
    return Buffer.from(await done);
  } catch (error) {
    post({ kind: "drop" });
    throw error;
  } finally {
    thread.waiting.delete(id);
    // A process that wants to end waits for documents, not for the thread.
    if (thread.waiting.size === 0) thread.worker.unref();
  }
}

/** The thread, started when the first document is asked for, and again after one has failed. */
function threadAtWork(): Thread {
  if (running !== undefined) return running;
  const [normal, bold] = FONT_FILES;
  const worker = new Worker(PROGRAM, { workerData: { fonts: { normal, bold } }, execArgv: [] });
  const thread: Thread = { worker, waiting: new Map() };
  const fail = (error: Error) => {
    if (running === thread) running = undefined;
    for (const { reject } of thread.waiting.values()) reject(error);
  };
  worker.on("message", (said: Said) => {
    const waiting = thread.waiting.get(said.id);
    if ("bytes" in said) waiting?.resolve(said.bytes);
    else waiting?.reject(new Error(`A PDF could not be made: ${said.error}`));
  });
  worker.on("error", fail);
  worker.on("exit", () => fail(new Error("The thread that makes PDFs has ended.")));
  worker.unref();
  running = thread;
  return thread;
}
