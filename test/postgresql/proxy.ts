import { once } from "node:events";
import { connect, createServer, type Socket } from "node:net";
import { join } from "node:path";
import { onTestFinished } from "vitest";

/** What is between the service and its database, and can fail as networks do. */
export type Proxy = {
  /** A URL of the database through the proxy, for one that leads to the server itself. */
  readonly through: (url: string) => string;
  /** Leads to the server in another folder from now on. */
  readonly leadTo: (folder: string) => void;
  /** Cuts every connection. */
  readonly cut: () => void;
  /** Lets nobody in, as when the machine is gone; `false` lets them in again. */
  readonly refuse: (isRefusing: boolean) => void;
  /** Lets nothing through any more, in either direction, and closes nothing. */
  readonly stall: (isStalling: boolean) => void;
  /** Cuts the next connection that sends this text: before the server has it, or once the server has answered with it too, as with a COMMIT. */
  readonly cutAt: (text: string, moment: "before" | "after", then?: () => void) => void;
};

const SOCKET = ".s.PGSQL.5432";
/** What locks the row of `writing`, by its name: reading has its COMMITs too. */
const WRITES = "lock_for_writing";
const ENDS = ["COMMIT\0", "ROLLBACK\0"];

type Trap = {
  readonly text: string;
  readonly moment: "before" | "after";
  readonly then: (() => void) | undefined;
};

/** A proxy to the server whose socket is in a folder. It is gone after the test. */
export async function openProxy(folder: string): Promise<Proxy> {
  const open = new Set<Socket>();
  let target = folder;
  let trap: Trap | undefined;
  let isRefusing = false;
  let isStalling = false;

  const listener = createServer((client) => {
    if (isRefusing) return void client.destroy();
    const server = connect(join(target, SOCKET));
    let isWriting = false;
    let isCutAfter: Trap | undefined;
    const end = () => {
      for (const socket of [client, server]) {
        socket.destroy();
        open.delete(socket);
      }
    };
    for (const socket of [client, server]) {
      open.add(socket);
      socket.on("error", end);
      socket.on("close", end);
    }
    client.on("data", (bytes) => {
      if (isStalling) return;
      const text = bytes.toString("latin1");
      // What is sent together may end one transaction and begin the next.
      const from = isWriting ? 0 : text.indexOf(WRITES);
      const isTrapped = trap !== undefined && from >= 0 && text.includes(trap.text, from);
      const last = Math.max(...ENDS.map((each) => text.lastIndexOf(each)));
      isWriting = text.lastIndexOf(WRITES) > last || (isWriting && last < 0);
      if (!isTrapped) return void server.write(bytes);
      const sprung = trap;
      trap = undefined;
      if (sprung?.moment === "before") {
        sprung.then?.();
        return end();
      }
      isCutAfter = sprung;
      server.write(bytes);
    });
    server.on("data", (bytes) => {
      if (isStalling) return;
      if (isCutAfter === undefined) return void client.write(bytes);
      // Statements before it that were sent together with it are answered first.
      if (!bytes.toString("latin1").includes(isCutAfter.text)) return;
      isCutAfter.then?.();
      end();
    });
  });
  listener.listen(0, "127.0.0.1");
  await once(listener, "listening");
  const address = listener.address();
  const port = typeof address === "object" && address !== null ? address.port : 0;
  const cut = () => {
    for (const socket of [...open]) socket.destroy();
  };
  onTestFinished(() => {
    cut();
    listener.close();
  });
  return {
    through: (url) => {
      const proxied = new URL(url);
      proxied.searchParams.delete("host");
      proxied.hostname = "127.0.0.1";
      proxied.port = String(port);
      return String(proxied);
    },
    leadTo: (other) => {
      target = other;
    },
    cut,
    refuse: (is) => {
      isRefusing = is;
      if (is) cut();
    },
    stall: (is) => {
      isStalling = is;
    },
    cutAt: (text, moment, then) => {
      trap = { text, moment, then };
    },
  };
}
