/** Somebody who follows the events of a shop, at whichever process answers, on from the last one heard. */
export type Follower = {
  /** Every sequence in the order in which it came. */
  readonly heard: () => readonly number[];
  readonly leave: () => void;
};

/** How long somebody waits who was cut off or refused, ms. */
const AGAIN_AFTER_MS = 20;

/** Follows from the first event on; `nextUrl` names the process to ask when a stream has ended. */
export function follow(nextUrl: () => string, key: string): Follower {
  const heard: number[] = [];
  const leaving = new AbortController();

  async function followOne(): Promise<void> {
    const last = heard.at(-1);
    const response = await fetch(`${nextUrl()}/v1/events/stream`, {
      headers: {
        authorization: `Bearer ${key}`,
        ...(last !== undefined && { "last-event-id": String(last) }),
      },
      signal: leaving.signal,
    });
    if (response.status !== 200) return;
    const reader = response.body?.getReader();
    const decoder = new TextDecoder();
    let text = "";
    for (let part = await reader?.read(); part?.done === false; part = await reader?.read()) {
      text += decoder.decode(part.value, { stream: true });
      // Half a message at the end of a part is read with the next.
      const whole = text.lastIndexOf("\n\n") + 1;
      for (const [, id] of text.slice(0, whole).matchAll(/^id: (\d+)$/gm)) heard.push(Number(id));
      text = text.slice(whole);
    }
  }

  void (async () => {
    while (!leaving.signal.aborted) {
      await followOne().catch(() => undefined);
      await new Promise((resolve) => setTimeout(resolve, AGAIN_AFTER_MS));
    }
  })();
  return { heard: () => heard, leave: () => leaving.abort() };
}
