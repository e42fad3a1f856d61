// A page of measuring: keeps what is typed on the device from the first letter, and what was entered without a connection
// until there is one. With a connection a form goes where it goes without this script.
import * as outbox from "./outbox.js";
import { button, element } from "./elements.js";

const page = document.getElementById("measure");
const notice = document.getElementById("unsent");
const told = document.getElementById("told");
const { plan: PLAN, root: ROOT, way: WAY } = page.dataset;
const DRAFT = `stillground.draft.${PLAN}.${WAY}`;
const forms = Array.from(page.querySelectorAll("form.kept"));
let busy = false;
let closed = false;
let trouble = "";

const read = () => outbox.read(PLAN);
const say = (text) => {
  told.textContent = text;
};
const change = (id, how) => {
  outbox.write(
    PLAN,
    read().flatMap((one) => (one.id === id ? how(one) : [one])),
  );
  show();
};

const boxes = (form) => Array.from(form.elements).filter((box) => box.name && box.type !== "hidden");
const asShown = (box) => (box.options ? Array.from(box.options).find((one) => one.defaultSelected)?.value || "" : box.defaultValue);

// What is typed and not entered yet, by form and box.
const keepDraft = () => {
  const typed = forms.flatMap((form) =>
    boxes(form)
      .filter((box) => box.value !== asShown(box))
      .map((box) => [form.dataset.name, box.name, box.value]),
  );
  try {
    window.localStorage.setItem(DRAFT, JSON.stringify(typed));
  } catch {
    // Without room only what was entered is kept.
  }
};

// What the page came with goes before what was typed earlier: it may be what a file said, or what has to be put right.
const fill = (typed) => {
  for (const [name, boxName, value] of typed) {
    const form = forms.find((one) => one.dataset.name === name);
    const box = form && boxes(form).find((one) => one.name === boxName);
    if (box && asShown(box) === "") {
      box.value = value;
    }
  }
};
const giveBack = () => {
  try {
    fill(JSON.parse(window.localStorage.getItem(DRAFT) || "[]"));
  } catch {
    window.localStorage.removeItem(DRAFT);
  }
};

const ours = (one) => forms.find((form) => (one.to || "record") === form.dataset.to && new URLSearchParams(one.body).get("task") === (form.elements.task?.value ?? null));

// A form that was refused goes back to be put right, and waits no more.
const putBack = (one) => {
  const form = ours(one);
  if (!form) {
    window.location = outbox.addressOf(ROOT, one);
    return;
  }
  for (const [name, value] of new URLSearchParams(one.body)) {
    const box = boxes(form).find((found) => found.name === name);
    if (box) {
      box.value = value;
    }
  }
  keepDraft();
  change(one.id, () => []);
  form.scrollIntoView();
  boxes(form)[0].focus({ preventScroll: true });
};

const standing = (count) => {
  const forms = `${count === 1 ? "One form is" : `${count} forms are`} not sent yet, and kept on this device`;
  if (closed) {
    return `${forms}. This link opens the plan no more, or enters nothing more. Ask for a new one and open it on this device: what waits is sent then.`;
  }
  if (trouble) {
    return `${forms}. The planner answers and does not take it just now: “${trouble}” It is tried again by itself.`;
  }
  return `${forms} until there is a connection. It goes out by itself then; you may go on. Leave this page open until then: without a connection it cannot be opened again.`;
};

const show = () => {
  const waiting = read();
  notice.replaceChildren();
  const open = waiting.filter((one) => !one.refused).length;
  if (open > 0 && !busy) {
    notice.append(element("p", standing(open)));
  }
  const list = document.createElement("ul");
  for (const one of waiting.filter((one) => one.refused || !busy)) {
    const line = element("li", `${one.title}, ${new Date(one.at).toLocaleString()}`);
    if (one.refused) {
      line.append(element("p", `Not taken: ${one.refused}`));
      line.append(button("Put it back into the form", () => putBack(one)), " ");
      line.append(button("Throw it away", () => change(one.id, () => [])));
    }
    list.append(line);
  }
  if (list.children.length > 0) {
    notice.append(list);
  }
};

// Sends what waits, the oldest first. What became of each, by its name.
const flush = async () => {
  const became = {};
  if (busy || closed) {
    return became;
  }
  busy = true;
  try {
    for (let one; (one = read().find((waiting) => !waiting.refused)); ) {
      const found = await outbox.outcome(outbox.addressOf(ROOT, one), new URLSearchParams(one.body));
      trouble = found.trouble || "";
      closed = found.closed || false;
      became[one.id] = found;
      if (found.kept) {
        change(one.id, () => []);
        say(`Kept: ${one.title}.`);
      } else if (found.refused) {
        change(one.id, (waiting) => [{ ...waiting, refused: found.refused }]);
      } else {
        break;
      }
    }
  } catch {
    // The browser's own store failed for a moment; what waits is looked at again.
  }
  busy = false;
  show();
  return became;
};

const enter = async (form) => {
  const body = new URLSearchParams(new FormData(form));
  const at = new Date().toISOString();
  body.set("at", at);
  body.set("do", "keep");
  const to = form.dataset.to === "record" ? undefined : form.dataset.to;
  const one = { id: body.get("form"), title: form.dataset.title, at, to, body: body.toString() };
  outbox.write(PLAN, [...read(), one]);
  say(`On the way: ${one.title}.`);
  const became = (await flush())[one.id] || {};
  if (became.kept) {
    window.localStorage.removeItem(DRAFT);
    window.location = became.to || `${ROOT}/measure/${WAY}?kept=1`;
  } else if (became.refused) {
    // The page says at each box what has to be put right.
    change(one.id, () => []);
    form.submit();
  } else {
    form.reset();
    form.elements.form.value = outbox.word();
    for (const box of boxes(form).filter((box) => box.name === "who")) {
      box.value = body.get("who");
    }
    keepDraft();
    say(`Kept on this device, not sent yet: ${one.title}. You may go on.`);
  }
};

const start = () => {
  giveBack();
  page.addEventListener("submit", (event) => {
    if (!forms.includes(event.target)) {
      return;
    }
    event.preventDefault();
    enter(event.target);
  });
  page.addEventListener("input", () => {
    say("");
    keepDraft();
  });
  for (const event of ["online", "focus"]) {
    window.addEventListener(event, flush);
  }
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && flush());
  window.addEventListener("storage", show);
  window.setInterval(() => read().length > 0 && flush(), outbox.RETRY_MS);
  flush();
};

// A browser that keeps nothing sends the forms as it would without this script.
try {
  outbox.write(PLAN, read());
  start();
} catch {
  say("This browser keeps nothing for later: what you enter is sent at once, and only with a connection.");
}
