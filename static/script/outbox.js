// What was entered and is not with the planner yet: it lies in the browser under the plan's name, never under the link, and
// is sent from whichever of the plan's pages is open. Only the service's own words, in JSON, are believed.
const key = (plan) => `stillground.unsent.${plan}`;
// Refusals that another sending of the same changes nothing about, and those that end with the link.
const REFUSED = [400, 409, 413, 415, 422];
const LINK = ["no_such_link", "not_with_this_link"];

export const PATIENCE_MS = 25000;
export const RETRY_MS = 20000;

export const read = (plan) => {
  const waiting = JSON.parse(window.localStorage.getItem(key(plan)) || "[]");
  return Array.isArray(waiting) ? waiting : [];
};

export const write = (plan, waiting) => window.localStorage.setItem(key(plan), JSON.stringify(waiting));

// A name that nobody else makes, so that what is sent twice is kept once.
export const word = () => {
  const bytes = window.crypto.getRandomValues(new Uint8Array(15));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
};

const send = async (address, body, patience) => {
  const given = new AbortController();
  const timer = window.setTimeout(() => given.abort(), patience);
  try {
    const headers = { accept: "application/json" };
    const reply = await fetch(address, { method: "POST", body, headers, redirect: "error", signal: given.signal });
    return { status: reply.status, said: await reply.json().catch(() => ({})) };
  } catch {
    return { status: 0, said: {} };
  } finally {
    window.clearTimeout(timer);
  }
};

// What became of a sending: kept, refused with its words, or neither, with what the service says of its trouble.
export const outcome = async (address, body, patience = PATIENCE_MS) => {
  const { status, said } = await send(address, body, patience);
  if (status === 200 && typeof said.kept === "number") {
    return { kept: true, to: said.to };
  }
  const words = Array.isArray(said.refused) ? said.refused.join(" ") : said.detail;
  if (REFUSED.includes(status) && words && said.code !== "contradictory") {
    return { refused: words };
  }
  const closed = LINK.includes(said.code);
  return { closed, trouble: said.code && !closed ? said.detail : "" };
};

// Where a form goes below the plan's address: a measurement to its own page, all else into the record.
export const addressOf = (root, one) => `${root}/${one.to || "record"}`;
