// Keeps what was entered without a connection, and sends it when there is one. The forms do the same without this script
// as long as the service can be reached. What waits lies in the browser under the plan's name, never under the link.
"use strict";

(() => {
  const page = document.getElementById("record");
  const notice = document.getElementById("unsent");
  if (!page || !notice || !window.fetch || !window.crypto) {
    return;
  }
  const KEY = `stillground.unsent.${page.dataset.plan}`;
  const HERE = window.location.pathname;
  const RETRY_MS = 20000;
  const PATIENCE_MS = 25000;
  const PHOTO_PATIENCE_MS = 200000;
  let busy = false;
  let closed = false;

  const read = () => {
    const waiting = JSON.parse(window.localStorage.getItem(KEY) || "[]");
    return Array.isArray(waiting) ? waiting : [];
  };
  const write = (waiting) => window.localStorage.setItem(KEY, JSON.stringify(waiting));

  // A browser that keeps nothing sends the forms as it would without this script.
  try {
    write(read());
  } catch {
    return;
  }

  // Photographs wait in the browser's database, since they are too large for the store that keeps the forms.
  const MOST_WAITING_BYTES = 64 * 1024 * 1024;
  let pictures = [];

  const database = () =>
    new Promise((done, failed) => {
      const opening = window.indexedDB.open("stillground.photographs", 1);
      opening.onupgradeneeded = () => opening.result.createObjectStore("waiting", { keyPath: "id" });
      opening.onsuccess = () => done(opening.result);
      opening.onerror = () => failed(opening.error);
    });

  // One step of work on what waits; what it gives is given when it is kept for good.
  const shelf = async (mode, work) => {
    const open = await database();
    try {
      return await new Promise((done, failed) => {
        const step = open.transaction("waiting", mode);
        const asked = work(step.objectStore("waiting"));
        step.oncomplete = () => done(asked.result);
        step.onabort = () => failed(step.error);
      });
    } finally {
      open.close();
    }
  };

  const look = async () => {
    try {
      const all = await shelf("readonly", (waiting) => waiting.getAll());
      pictures = all.filter((one) => one.plan === page.dataset.plan).sort((one, other) => one.at.localeCompare(other.at));
    } catch {
      pictures = [];
    }
  };

  const keepPicture = (one) => shelf("readwrite", (waiting) => waiting.put(one));
  const dropPicture = (id) => shelf("readwrite", (waiting) => waiting.delete(id));

  const change = (id, how) => {
    write(read().flatMap((one) => (one.id === id ? how(one) : [one])));
    show();
  };

  const word = () => {
    const bytes = window.crypto.getRandomValues(new Uint8Array(15));
    return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  };

  const element = (name, text) => {
    const made = document.createElement(name);
    made.textContent = text;
    return made;
  };

  const button = (text, act) => {
    const made = element("button", text);
    made.type = "button";
    made.className = "minor";
    made.addEventListener("click", act);
    return made;
  };

  // What waits, in words.
  const show = () => {
    const waiting = read();
    notice.replaceChildren();
    if (waiting.length === 0 && pictures.length === 0) {
      return;
    }
    const forms = waiting.length === 1 ? "1 form" : `${waiting.length} forms`;
    const photographs = pictures.length === 1 ? "1 photograph" : `${pictures.length} photographs`;
    const what = [waiting.length > 0 ? forms : "", pictures.length > 0 ? photographs : ""].filter(Boolean).join(" and ");
    const count = `${what} ${waiting.length + pictures.length === 1 ? "is" : "are"}`;
    const why = closed
      ? "This link opens the plan no more. Ask for a new one and open it on this device: they are sent then."
      : "They go out by themselves when there is a connection; you may go on.";
    notice.append(element("p", `${count} not sent yet, and kept on this device. ${why}`));
    const list = document.createElement("ul");
    for (const one of waiting) {
      const line = element("li", `${one.title}, ${new Date(one.at).toLocaleString()}`);
      if (one.refused) {
        line.append(element("p", `Not taken: ${one.refused}`));
        line.append(button("Put it back into the form", () => putBack(one)), " ");
        line.append(button("Throw it away", () => change(one.id, () => [])));
      }
      list.append(line);
    }
    for (const one of pictures) {
      const line = element("li", `${one.title}: photograph, ${new Date(one.at).toLocaleString()}`);
      if (one.refused) {
        line.append(element("p", `Not taken: ${one.refused}`));
        const away = async () => {
          await dropPicture(one.id);
          await look();
          show();
        };
        line.append(button("Throw it away", away));
      }
      list.append(line);
    }
    notice.append(list);
  };

  const formOf = (task) =>
    Array.from(document.querySelectorAll("form.record")).find((form) => form.elements.task.value === task && !form.elements.decision);

  const fill = (form, pairs) => {
    for (const [name, value] of pairs) {
      const boxes = form.elements[name];
      if (!boxes || ["task", "form", "revision", "at", "do"].includes(name)) {
        continue;
      }
      for (const box of boxes instanceof RadioNodeList ? boxes : [boxes]) {
        if (box.type === "checkbox" || box.type === "radio") {
          box.checked = box.value === value;
        } else {
          box.value = value;
        }
      }
    }
  };

  // A form that was refused goes back to be put right; it waits on until the form is sent again in its place.
  const putBack = (one) => {
    const body = new URLSearchParams(one.body);
    const form = formOf(body.get("task"));
    if (!form) {
      return;
    }
    fill(form, body);
    form.dataset.replaces = one.id;
    const fold = form.closest("details");
    if (fold) {
      fold.open = true;
    }
    form.scrollIntoView();
  };

  const send = async (address, body, patience) => {
    const given = new AbortController();
    const timer = window.setTimeout(() => given.abort(), patience);
    try {
      const reply = await fetch(address, {
        method: "POST",
        body,
        headers: { accept: "application/json" },
        redirect: "error",
        signal: given.signal,
      });
      const said = await reply.json().catch(() => ({}));
      return { status: reply.status, said };
    } catch {
      return { status: 0, said: {} };
    } finally {
      window.clearTimeout(timer);
    }
  };

  const formWith = (one) => {
    const body = new FormData();
    for (const [name, value] of one.pairs) {
      body.append(name, value);
    }
    body.append("photo", new Blob([one.bytes], { type: one.kind }), "photograph");
    return body;
  };

  // Photographs follow the forms, one after another; each has a name of its own, so that one sent twice is kept once.
  const flushPictures = async () => {
    let sent = 0;
    await look();
    while (!closed) {
      const one = pictures.find((waiting) => !waiting.refused);
      if (!one) {
        break;
      }
      const { status, said } = await send(`${HERE}/photos`, formWith(one), PHOTO_PATIENCE_MS);
      if (status === 200 && typeof said.kept === "number") {
        await dropPicture(one.id);
        sent += 1;
      } else if ([409, 413, 422].includes(status) && (said.detail || said.refused)) {
        await keepPicture({ ...one, refused: said.detail || said.refused.join(" ") });
      } else {
        closed = status === 403 || status === 404;
        break;
      }
      await look();
    }
    return sent;
  };

  // Sends what waits, the oldest first. Only the service's own words that it kept a form take it off the list.
  const flush = async () => {
    if (busy || closed) {
      return;
    }
    busy = true;
    let sent = 0;
    for (;;) {
      const one = read().find((waiting) => !waiting.refused);
      if (!one) {
        break;
      }
      const { status, said } = await send(HERE, new URLSearchParams(one.body), PATIENCE_MS);
      if (status === 200 && typeof said.kept === "number") {
        change(one.id, () => []);
        sent += 1;
      } else if (status === 422 || (status === 409 && said.code === "name_taken")) {
        const refused = Array.isArray(said.refused) ? said.refused.join(" ") : said.detail || "it could not be read.";
        change(one.id, (kept) => [{ ...kept, refused }]);
      } else {
        closed = status === 403 || status === 404;
        break;
      }
    }
    sent += await flushPictures().catch(() => 0);
    busy = false;
    show();
    if (sent > 0) {
      await refresh();
    }
  };

  const isTyped = (box) => {
    if (box.type === "checkbox" || box.type === "radio") {
      return box.checked !== box.defaultChecked;
    }
    if (box.options) {
      return Array.from(box.options).some((option) => option.selected !== option.defaultSelected && option.value !== "");
    }
    return box.type !== "hidden" && box.type !== "file" && box.name && box.value !== box.defaultValue;
  };

  // The page as it stands now, with what is typed and open kept as it is.
  const refresh = async () => {
    try {
      const reply = await fetch(HERE, { headers: { accept: "text/html" } });
      const text = reply.ok ? await reply.text() : "";
      const fresh = new DOMParser().parseFromString(text, "text/html").getElementById("board");
      const board = document.getElementById("board");
      if (!fresh || !board) {
        return;
      }
      const typed = Array.from(board.querySelectorAll("form.record"), (form) => ({
        task: form.elements.task.value,
        pairs: Array.from(form.elements).filter(isTyped).map((box) => [box.name, box.value]),
        replaces: form.dataset.replaces,
      })).filter((form) => form.pairs.length > 0);
      const open = Array.from(board.querySelectorAll("details.task[open] > summary"), (summary) => summary.id);
      const files = Array.from(board.querySelectorAll("input[type=file]")).some((box) => box.files.length > 0);
      if (files) {
        return;
      }
      board.replaceWith(fresh);
      for (const form of typed) {
        const to = formOf(form.task);
        if (to) {
          fill(to, form.pairs);
          if (form.replaces) {
            to.dataset.replaces = form.replaces;
          }
        }
      }
      for (const id of open) {
        const fold = document.getElementById(id)?.closest("details.task");
        if (fold) {
          fold.open = true;
        }
      }
    } catch {
      // The connection went again: the page stays as it is.
    }
  };

  const enter = (form, pressed) => {
    const body = new URLSearchParams(new FormData(form));
    const at = new Date().toISOString();
    body.set("at", at);
    body.set("do", pressed?.value || "keep");
    const said = Array.from(body).some(([name, value]) => (name === "note" || /^item~[^~]*(~none)?$/.test(name)) && value.trim() !== "");
    if (body.get("do") === "keep" && !said) {
      form.elements.note.focus();
      return;
    }
    const one = { id: body.get("form"), title: form.dataset.title, at, body: body.toString() };
    write([...read().filter((waiting) => waiting.id !== form.dataset.replaces), one]);
    const who = body.get("who");
    form.reset();
    form.elements.form.value = `${word()}.${body.get("task")}`;
    delete form.dataset.replaces;
    for (const box of document.querySelectorAll("input[name=who]")) {
      box.value = who;
      box.defaultValue = who;
    }
    show();
    flush();
  };

  const picture = async (form) => {
    const told = form.querySelector(".sent");
    const body = new FormData(form);
    const file = body.get("photo");
    if (!file || file.size === 0) {
      told.textContent = "No photograph was chosen.";
      return;
    }
    await look();
    if (pictures.reduce((sum, one) => sum + one.bytes.byteLength, file.size) > MOST_WAITING_BYTES) {
      told.textContent = "64 MiB of photographs wait already, the most that is kept here. It stays with your other pictures; send it later.";
      return;
    }
    body.delete("photo");
    const one = { id: body.get("form"), plan: page.dataset.plan, title: formOf(body.get("task"))?.dataset.title || "", at: new Date().toISOString() };
    body.set("at", one.at);
    try {
      await keepPicture({ ...one, pairs: Array.from(body), kind: file.type, bytes: await file.arrayBuffer() });
    } catch {
      told.textContent = "This browser has no room for the photograph: it was not kept. It stays with your other pictures; send it later.";
      return;
    }
    form.reset();
    form.elements.form.value = `${word()}.${form.elements.task.value}`;
    told.textContent = "The photograph is kept on this device until it is sent.";
    await look();
    show();
    await flush();
    if (!pictures.some((waiting) => waiting.id === one.id)) {
      told.textContent = "The photograph was kept.";
    }
  };

  page.addEventListener("submit", (event) => {
    const form = event.target;
    if (form.matches("form.record")) {
      try {
        enter(form, event.submitter);
        event.preventDefault();
      } catch {
        // The browser keeps nothing any more: the form goes its usual way.
      }
    } else if (form.matches("form.photo")) {
      event.preventDefault();
      picture(form);
    }
  });

  look().then(() => {
    show();
    flush();
  });
  window.addEventListener("online", flush);
  window.addEventListener("focus", flush);
  window.addEventListener("storage", show);
  window.setInterval(() => {
    if (read().length > 0 || pictures.length > 0) {
      flush();
    }
  }, RETRY_MS);
})();
