import Fastify from "fastify";
import { describe, expect, it } from "vitest";
import { injected } from "../../testing/injected.ts";
import { answerAgain } from "./answer-again.ts";
import type { App } from "./app-type.ts";

/** A service of one record, whose answers are numbered as they are made. */
async function service(markOf: (at: number) => number | Promise<number> = (at) => at) {
  let made = 0;
  const is = { at: 0, closing: false, busy: false };
  const app: App = Fastify();
  app.decorate("isUnderPressure", () => is.busy);
  const noteRepeat = answerAgain(app, {
    mark: () => markOf(is.at),
    recallCaller: () => () => ({ keyId: "key_1", role: "member" }),
    countKey: () => ({ most: 9, isTooMany: false, leftS: 1, policy: "", limit: "" }),
    observerOf: () => () => {},
    isClosing: () => is.closing,
    trustedProxies: [],
  });
  app.decorateRequest("mark", undefined);
  app.get("/record", (request, reply) => {
    request.mark = is.at;
    made += 1;
    const text = `answer ${made}`;
    noteRepeat(request, text);
    return reply.send(text);
  });
  await app.ready();
  const ask = async () => {
    const headers = { authorization: "Bearer key" };
    return (await injected(app, { url: "/record", headers })).payload;
  };
  return { ask, is };
}

describe("what was sent before", () => {
  it("is sent again", async () => {
    const { ask } = await service();
    expect([await ask(), await ask(), await ask()]).toEqual(["answer 1", "answer 1", "answer 1"]);
  });

  it("is not after a commit", async () => {
    const { ask, is } = await service();
    await ask();
    is.at += 1;
    expect([await ask(), await ask()]).toEqual(["answer 2", "answer 2"]);
  });

  it("is not while the service closes or is busy: others refuse then", async () => {
    const { ask, is } = await service();
    await ask();
    is.closing = true;
    expect(await ask()).toBe("answer 2");
    is.closing = false;
    is.busy = true;
    expect(await ask()).toBe("answer 3");
    is.busy = false;
    expect(await ask()).toBe("answer 1");
  });

  it("is not where the mark must be waited for: whoever waits has a limit of time", async () => {
    const { ask } = await service(async () => 0);
    expect([await ask(), await ask()]).toEqual(["answer 1", "answer 2"]);
  });
});
