/** The service said no, in a sentence. */
export class Refused extends Error {
  constructor(status, message) {
    super(message);
    this.status = status;
  }
}

/** What the service answers, as JSON or text. Throws Refused where it says no. */
export async function ask(key, path, body) {
  // From the page's own address: the service may be at a path of a larger site.
  const answer = await fetch(`..${path}`, {
    method: body === undefined ? "GET" : "POST",
    headers: { Authorization: `Bearer ${key}`, ...(body && { "Content-Type": "application/json" }) },
    body: body && JSON.stringify(body),
    cache: "no-store",
  });
  const isJson = (answer.headers.get("content-type") ?? "").includes("json");
  const content = isJson ? await answer.json() : await answer.text();
  if (answer.ok) return content;
  throw new Refused(answer.status, isJson ? sentenceOf(content) : `The service answered ${answer.status}.`);
}

/** The same, but what may not be seen or is not there is just left out. */
export async function askQuietly(key, path) {
  try {
    return await ask(key, path);
  } catch (error) {
    if (error instanceof Refused && (error.status === 403 || error.status === 404)) return undefined;
    throw error;
  }
}

/** All rows of a list, page by page; none of one that may not be seen. */
export async function askAll(key, path) {
  const rows = [];
  let more = "";
  do {
    const page = await askQuietly(key, `${path}&limit=200${more}`);
    if (page === undefined) break;
    rows.push(...page.data);
    more = page.nextCursor ? `&cursor=${encodeURIComponent(page.nextCursor)}` : "";
  } while (more !== "");
  return rows;
}

/** What a problem says, and of each field that it names. */
function sentenceOf({ detail, errors = [] }) {
  return [detail, ...errors.map(({ pointer, message }) => `${pointer}: ${message}`)].join(" ");
}
