// Keeps what was entered without a connection, and sends it when there is one. The forms do the same without this script
// as long as the service can be reached. What waits lies in the browser under the plan's name, never under the link.
import * as outbox from "./outbox.js";
import * as photographs from "./photographs.js";
import { arrive, fill, formOf, refresh, stops, turnTo } from "./board.js";
import * as draft from "./draft.js";
import { button, element } from "./elements.js";

const page = document.getElementById("record");
const notice = document.getElementById("unsent");
const told = document.getElementById("told");
const PLAN = page.dataset.plan;
const HERE = window.location.pathname;
const ROOT = HERE.replace(/\/record$/, "");
const PHOTO_PATIENCE_MS = 200000;
// Whoever comes back to the page after so long sees what others have entered meanwhile.
const FRESH_MS = 60000;
let busy = false;
let closed = false;
let tried = false;
let trouble = "";
let pictures = [];
let looked = Date.now();
let latest = {};

const read = () => outbox.read(PLAN);
const write = (waiting) => outbox.write(PLAN, waiting);

const say = (text) => {
  told.textContent = text;
};

const change = (id, how) => {
  write(read().flatMap((one) => (one.id === id ? how(one) : [one])));
  show();
};

const look = async () => {
  pictures = await photographs.all(PLAN);
  show();
};

const counted = (forms, shots, [one, many]) => {
  const words = [
    forms > 0 ? `${forms} ${forms === 1 ? "form" : "forms"}` : "",
    shots > 0 ? `${shots} ${shots === 1 ? "photograph" : "photographs"}` : "",
  ];
  return `${words.filter(Boolean).join(" and ")} ${forms + shots === 1 ? one : many}`;
};

// What is to be said of what waits to be sent.
const standing = (count) => {
  if (closed) {
    return `${count} not sent yet, and kept on this device. This link opens the plan no more, or enters nothing more. Ask for a new one and open it on this device: what waits is sent then.`;
  }
  if (trouble) {
    return `${count} not sent yet, and kept on this device. The planner answers and does not take it just now: “${trouble}” It is tried again by itself.`;
  }
  if (busy && !tried) {
    return `${count} not sent yet: on the way.`;
  }
  return `${count} not sent yet, and kept on this device until there is a connection. It goes out by itself then; you may go on. Leave this page open until then: without a connection it cannot be opened again.`;
};

// A form or a photograph in the list of what waits; what was refused says why, and what can be done with it.
const line = (text, one, actions) => {
  const made = element("li", `${text}, ${new Date(one.at).toLocaleString()}`);
  if (one.refused) {
    made.append(element("p", `Not taken: ${one.refused}`));
    for (const [words, act] of actions) {
      made.append(button(words, act), " ");
    }
  }
  return made;
};

const ofForm = (one) =>
  line(one.title, one, [
    ["Put it back into the form", () => putBack(one)],
    ["Throw it away", () => change(one.id, () => [])],
  ]);

const ofPicture = (one) => {
  const again = async () => {
    await photographs.keep({ ...one, refused: undefined });
    await look();
    await flush();
  };
  const away = async () => {
    await photographs.drop(one.id);
    await look();
  };
  const made = line(`${one.title}: photograph`, one, [
    ["Send it again", again],
    ["Save it on this device", () => photographs.save(one)],
    ["Throw it away", away],
  ]);
  if (one.refused) {
    photographs.glance(one).then((seen) => seen && made.querySelector("p").before(seen));
  }
  return made;
};

// What waits, in words: above the work, and at each task what was entered there.
const show = () => {
  const waiting = read();
  notice.replaceChildren();
  for (const old of page.querySelectorAll(".pending")) {
    old.remove();
  }
  if (waiting.length === 0 && pictures.length === 0) {
    return;
  }
  const open = (one) => !one.refused;
  const [forms, shots] = [waiting.filter(open).length, pictures.filter(open).length];
  if (forms + shots > 0) {
    notice.append(element("p", standing(counted(forms, shots, ["is", "are"]))));
  }
  const [wrong, dark] = [waiting.length - forms, pictures.length - shots];
  if (wrong + dark > 0) {
    notice.append(element("p", `${counted(wrong, dark, ["was", "were"])} not taken, and kept on this device until you decide.`));
  }
  const list = document.createElement("ul");
  list.append(...waiting.map(ofForm), ...pictures.map(ofPicture));
  notice.append(list);
  if (tried) {
    waiting.filter(open).forEach(mark);
  }
};

// At its task: what was entered and is not with the planner yet.
const mark = (one) => {
  const body = new URLSearchParams(one.body);
  const form = formOf(body.get("task"));
  if (!form) {
    return;
  }
  const said = { done: "ticked off", reopen: "not done after all" }[body.get("do")];
  const boxes = Array.from(form.querySelectorAll("[name^='item~']")).filter((box) => box.id && body.get(box.name));
  const found = boxes.map((box) => `${box.labels[0]?.textContent}: ${box.selectedOptions ? wordsOf(box, body) : body.get(box.name)}`);
  const all = [...found, body.get("note"), said].filter(Boolean).join("; ");
  const judged = found.length > 0 ? " It is compared with the plan when it is sent; until then look up what follows under “How?” at its box." : "";
  form.before(element("p", `Entered on this device and not sent yet: ${all}.${judged}`, "pending"));
};

const wordsOf = (box, body) => Array.from(box.options).find((option) => option.value === body.get(box.name))?.textContent;

// A form that was refused goes back to be put right; it waits on until the form is sent again in its place.
const putBack = (one) => {
  if (one.to) {
    window.location = outbox.addressOf(ROOT, one);
    return;
  }
  const body = new URLSearchParams(one.body);
  const form = formOf(body.get("task"));
  if (!form) {
    say("The plan has no such task any more. Write it as a note at another task, then throw this away.");
    return;
  }
  fill(form, body);
  form.dataset.replaces = one.id;
  const fold = form.closest("details");
  if (fold) {
    fold.open = true;
  }
  turnTo(body.get("task"));
  form.scrollIntoView();
  form.querySelector("input:not([type=hidden]), select, textarea").focus({ preventScroll: true });
};

// What became of a sending: kept, refused with its words, or neither.
const outcome = async (address, body, patience) => {
  const found = await outbox.outcome(address, body, patience);
  tried = true;
  trouble = found.trouble || "";
  if (found.kept || found.refused) {
    return found;
  }
  closed = found.closed;
  if (closed) {
    say("This link opens the plan no more, or enters nothing more. What you entered is kept on this device; ask for a new link.");
  }
  return {};
};

const flushForms = async () => {
  let sent = [];
  for (let one; (one = read().find((waiting) => !waiting.refused)); ) {
    const { kept, refused } = await outcome(outbox.addressOf(ROOT, one), new URLSearchParams(one.body));
    if (kept) {
      sent.push(one.title);
      change(one.id, () => []);
    } else if (refused) {
      change(one.id, (waiting) => [{ ...waiting, refused }]);
      say(`Not taken: ${one.title}. Why stands above.`);
    } else {
      break;
    }
  }
  return sent;
};

// Photographs follow the forms, one after another; each has a name of its own, so that one sent twice is kept once.
const flushPictures = async () => {
  let sent = [];
  await look();
  for (let one; !closed && (one = pictures.find((waiting) => !waiting.refused)); await look()) {
    const { kept, refused } = await outcome(`${HERE}/photos`, photographs.form(one), PHOTO_PATIENCE_MS);
    if (kept) {
      sent.push(`${one.title}, photograph`);
      await photographs.drop(one.id);
    } else if (refused) {
      await photographs.keep({ ...one, refused });
      say(`Not taken: ${one.title}, photograph. Why stands above.`);
    } else {
      break;
    }
  }
  return sent;
};

// Sends what waits, the oldest first. Only the service's own words that it kept a form take it off the list.
const flush = async () => {
  if (busy || closed) {
    return;
  }
  busy = true;
  let sent = [];
  try {
    sent = await flushForms();
    sent = [...sent, ...(await flushPictures())];
  } catch {
    // The browser's own store failed for a moment; what waits is looked at again.
  }
  busy = false;
  show();
  if (sent.length > 0 || Date.now() - looked > FRESH_MS) {
    await renew(sent);
  }
};

// The page as the planner has it now.
const renew = async (sent) => {
  looked = Date.now();
  const stopped = stops();
  const said = await refresh(HERE);
  if (sent.includes(latest.title)) {
    arrive(latest.task, stopped);
  }
  const held = stops() > stopped ? "It stops the work; what to do stands under “Stopped”." : "";
  const kept = sent.length > 0 ? `Kept: ${sent.join("; ")}.` : "";
  const words = [kept, held, said].filter(Boolean).join(" ");
  if (words) {
    say(words);
  }
  latest = {};
  show();
};

const enter = (form, pressed) => {
  const body = new URLSearchParams(new FormData(form));
  const at = new Date().toISOString();
  body.set("at", at);
  body.set("do", pressed?.value || "keep");
  const said = Array.from(body).some(([name, value]) => (name === "note" || /^item~[^~]*(~none)?$/.test(name)) && value.trim() !== "");
  if (body.get("do") === "keep" && !said) {
    say("Nothing was entered: fill in a box, write a note, or tick the task off.");
    form.elements.note.focus();
    return;
  }
  const one = { id: body.get("form"), title: form.dataset.title, at, body: body.toString() };
  write([...read().filter((waiting) => waiting.id !== form.dataset.replaces), one]);
  say(`On the way: ${one.title}.`);
  latest = { title: one.title, task: body.get("task") };
  tidy(form, body.get("who"));
  flush().then(() => {
    if (!closed && read().some((waiting) => waiting.id === one.id && !waiting.refused)) {
      say(`Kept on this device, not sent yet: ${one.title}. You may go on.`);
    }
  });
};

// The form again as it was, under a new name; whoever entered something need not write their name again.
const tidy = (form, who) => {
  form.reset();
  form.elements.form.value = `${outbox.word()}.${form.elements.task.value}`;
  delete form.dataset.replaces;
  draft.keep(PLAN);
  for (const box of document.querySelectorAll("input[name=who]")) {
    box.value = who;
    box.defaultValue = who;
  }
};

const picture = async (form) => {
  const body = new FormData(form);
  const file = body.get("photo");
  if (!file || file.size === 0) {
    say("No photograph was chosen.");
    return;
  }
  say("The photograph is made ready.");
  body.delete("photo");
  const task = body.get("task");
  const one = { id: body.get("form"), plan: PLAN, title: formOf(task)?.dataset.title || "", at: new Date().toISOString() };
  body.set("at", one.at);
  const why = await photographs.wait({ ...one, pairs: Array.from(body) }, file, Number(page.dataset.largestPhoto));
  if (why) {
    say(why);
    return;
  }
  tidy(form, body.get("who"));
  say("The photograph is kept on this device until it is sent.");
  await look();
  await flush();
};

const start = async () => {
  draft.giveBack(PLAN);
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
  page.addEventListener("input", () => {
    say("");
    draft.keep(PLAN);
  });
  window.addEventListener("online", flush);
  window.addEventListener("focus", flush);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && flush());
  window.addEventListener("storage", show);
  window.setInterval(() => (read().length > 0 || pictures.length > 0) && flush(), outbox.RETRY_MS);
  await look();
  await flush();
};

// A browser that keeps nothing sends the forms as it would without this script.
try {
  write(read());
  start();
} catch {
  say("This browser keeps nothing for later: what you enter is sent at once, and only with a connection.");
}
