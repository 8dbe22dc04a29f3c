// The calls that the page makes: the service's own, and nobody else's.

/** The words to choose from, in a language. */
export async function vocabulary(language) {
  const [climates, plants, signs, jobs, facts] = await Promise.all(
    ["climates", "plants", "signs", "jobs", "facts"].map((name) => all(name, language)),
  );
  return { climates, plants, signs, jobs, facts };
}

/** The ids of the signs that are looked for on a plant. */
export const signsOf = async (plant) => (await all("signs", "en", { plant })).map((sign) => sign.id);

/** Every entry of a list, page by page. */
async function all(name, language, more = {}) {
  const items = [];
  let cursor = null;
  do {
    const query = new URLSearchParams({ language, limit: "200", ...more, ...(cursor ? { cursor } : {}) });
    const answer = await fetch(`v1/${name}?${query}`);
    if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
    const page = await answer.json();
    items.push(...page.items);
    cursor = page.next_cursor;
  } while (cursor);
  return items;
}

/** `{ answer }`, or `{ problem }` as RFC 9457 lays it out. */
export async function advice(body) {
  const sent = await fetch("v1/advice", {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(body),
  });
  const read = await sent.json();
  return sent.ok ? { answer: read } : { problem: read };
}
