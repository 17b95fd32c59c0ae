import { once } from "node:events";
import { connect, createServer, type Socket } from "node:net";
import { onTestFinished } from "vitest";

/** When a connection is cut: before the server hears of COMMIT, or when it has done it and nobody hears of that. */
export type Cut = "before-commit" | "after-commit";

/** PostgreSQL's message of a simple query ends with a zero byte ("Message Formats" in its manual). */
const COMMIT = Buffer.from("COMMIT\0");

/** What a transaction that writes begins with. */
const WRITING = Buffer.from("READ WRITE\0");

/** A way to a server's socket that can cut the connection at the next COMMIT of a transaction that writes. */
export async function cuttingProxy(socketPath: string) {
  let cut: Cut | undefined;
  const open = new Set<Socket>();
  const proxy = createServer((client) => {
    const server = connect(socketPath);
    for (const socket of [client, server]) {
      open.add(socket);
      socket.on("error", () => undefined);
      socket.on("close", () => {
        open.delete(socket);
        client.destroy();
        server.destroy();
      });
    }
    let isWriting = false;
    let isDeaf = false;
    client.on("data", (sent: Buffer) => {
      // The COMMIT of a question may come together with the beginning of a transaction that writes.
      const [begins, ends] = [sent.lastIndexOf(WRITING), sent.lastIndexOf(COMMIT)];
      isWriting ||= begins >= 0;
      const now = isWriting && ends > begins ? cut : undefined;
      if (ends > begins) isWriting = false;
      if (now !== undefined) cut = undefined;
      isDeaf ||= now === "after-commit";
      if (now === "before-commit") client.destroy();
      else server.write(sent);
    });
    server.on("data", (answered: Buffer) => {
      if (!isDeaf) client.write(answered);
      else if (answered.includes(COMMIT)) client.destroy();
    });
  }).listen(0, "127.0.0.1");
  await once(proxy, "listening");
  onTestFinished(() => {
    for (const socket of open) socket.destroy();
    proxy.close();
  });
  const address = proxy.address();
  return {
    port: typeof address === "object" && address !== null ? address.port : 0,
    cutAt: (next: Cut) => {
      cut = next;
    },
    /** Whether a connection was cut since it was asked for. */
    isCut: () => cut === undefined,
  };
}
