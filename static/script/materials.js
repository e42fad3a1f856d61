// Sends each tick as it is made, and keeps it on the device while there is no connection. Without this script the form's
// button sends all ticks. What waits lies in the browser under the plan's name, never under the link.
"use strict";

(() => {
  const page = document.getElementById("order");
  const form = page?.querySelector("form.ticks");
  const notice = document.getElementById("unsent");
  const who = form?.elements.who;
  if (!form || !notice || !who || !window.fetch || !window.crypto) {
    return;
  }
  const KEY = `stillground.ticks.${page.dataset.plan}`;
  const RETRY_MS = 20000;
  const PATIENCE_MS = 25000;
  let busy = false;
  let closed = false;
  let kept = 0;

  const read = () => {
    const waiting = JSON.parse(window.localStorage.getItem(KEY) || "[]");
    return Array.isArray(waiting) ? waiting : [];
  };
  const write = (waiting) => window.localStorage.setItem(KEY, JSON.stringify(waiting));

  // A browser that keeps nothing sends the form as it would without this script.
  try {
    write(read());
  } catch {
    return;
  }

  const box = (line) => document.getElementById(`line-${line}`);
  const ticks = (count) => (count === 1 ? "1 tick" : `${count} ticks`);

  const word = () => {
    const bytes = window.crypto.getRandomValues(new Uint8Array(12));
    return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  };

  // Says at the line itself how its tick stands, since the notice may be far above.
  const mark = (line, text, waits) => {
    const row = box(line)?.closest(".line");
    if (!row) {
      return;
    }
    const said = row.querySelector(".by") || row.querySelector(".tick").insertAdjacentElement("afterend", document.createElement("p"));
    said.className = waits ? "by waits" : "by";
    said.textContent = text;
  };

  const show = () => {
    const waiting = read();
    const named = who.value.trim() !== "";
    for (const one of waiting) {
      if (box(one.line)) {
        box(one.line).checked = one.here;
        mark(one.line, one.refused ? "Not taken." : named ? "Not sent yet." : "Not sent yet: say above who ticks.", true);
      }
    }
    notice.replaceChildren();
    const say = (text) => {
      const said = document.createElement("p");
      said.textContent = text;
      notice.append(said);
    };
    const refused = waiting.find((one) => one.refused);
    if (closed && waiting.length > 0) {
      say(`${ticks(waiting.length)} not sent: this link opens the plan no more. Ask for a new one and open it on this device; they are sent then.`);
    } else if (refused) {
      say(`${ticks(waiting.length)} not taken: ${refused.refused}`);
    } else if (waiting.length > 0 && !named) {
      say(`${ticks(waiting.length)} not sent yet: say who ticks.`);
    } else if (waiting.length > 0) {
      say(`${ticks(waiting.length)} not sent yet, and kept on this device until there is a connection. You may go on.`);
    } else if (kept > 0) {
      say(`${ticks(kept)} kept.`);
    }
  };

  const send = async (one) => {
    const body = new URLSearchParams({ form: one.form, revision: one.revision, who: one.who || who.value, at: one.at });
    body.set(`${one.here ? "here" : "was"}~${one.line}`, "yes");
    const given = new AbortController();
    const timer = window.setTimeout(() => given.abort(), PATIENCE_MS);
    try {
      const reply = await fetch(form.action, {
        method: "POST",
        body,
        headers: { accept: "application/json" },
        redirect: "error",
        signal: given.signal,
      });
      return { status: reply.status, said: await reply.json().catch(() => ({})) };
    } catch {
      return { status: 0, said: {} };
    } finally {
      window.clearTimeout(timer);
    }
  };

  const change = (one, how) => write(read().flatMap((known) => (known.form === one.form ? how(known) : [known])));

  // Only the service's own words that it kept a tick take it off the list.
  const flush = async () => {
    if (busy || closed || !who.value.trim()) {
      show();
      return;
    }
    busy = true;
    for (;;) {
      const one = read().find((waiting) => !waiting.refused);
      if (!one) {
        break;
      }
      const { status, said } = await send(one);
      if (status === 200 && typeof said.kept === "number") {
        change(one, () => []);
        kept += 1;
        mark(one.line, one.here ? `There: ${one.who || who.value}, just now` : "Not there after all.", false);
      } else if (status === 422 || status === 409) {
        const refused = Array.isArray(said.refused) ? said.refused.join(" ") : said.detail || "it could not be read.";
        change(one, (known) => [{ ...known, refused }]);
      } else {
        closed = status === 403 || status === 404;
        break;
      }
    }
    busy = false;
    show();
  };

  form.addEventListener("change", (event) => {
    const line = event.target.id?.startsWith("line-") ? event.target.id.slice("line-".length) : "";
    if (line) {
      const one = { line, here: event.target.checked, form: word(), revision: form.elements.revision.value, at: new Date().toISOString(), who: who.value };
      try {
        write([...read().filter((known) => known.line !== line || (busy && !known.refused)), one]);
      } catch {
        // The browser has no room: the button sends all ticks.
        return;
      }
    } else if (event.target === who) {
      // Another name may be taken where this one was not.
      write(read().map(({ refused, ...one }) => (refused || !one.who ? { ...one, who: who.value } : one)));
    }
    show();
    flush();
  });

  form.addEventListener("submit", (event) => {
    if (read().length > 0 || kept > 0) {
      event.preventDefault();
      if (!who.value.trim()) {
        who.focus();
      }
      flush();
    }
  });

  show();
  flush();
  window.addEventListener("online", flush);
  window.addEventListener("focus", flush);
  window.addEventListener("storage", show);
  window.setInterval(() => {
    if (read().length > 0) {
      flush();
    }
  }, RETRY_MS);
})();
