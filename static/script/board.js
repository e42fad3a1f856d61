// The board of the record's page: its forms, and the page as the planner has it now, with what is typed kept as it is.

export const board = () => document.getElementById("board");

export const formOf = (task) =>
  Array.from(document.querySelectorAll("form.record")).find((form) => form.elements.task.value === task && !form.elements.decision);

export const fill = (form, pairs) => {
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

const isTyped = (box) => {
  if (box.type === "checkbox" || box.type === "radio") {
    return box.checked !== box.defaultChecked;
  }
  if (box.options) {
    return Array.from(box.options).some((option) => option.selected !== option.defaultSelected && option.value !== "");
  }
  return box.type !== "hidden" && box.type !== "file" && box.name && box.value !== box.defaultValue;
};

// A bare figure with the unit of its box: a changed plan may ask for it in another.
const withUnit = (box) => {
  const unit = box.closest(".entry")?.querySelector(".unit");
  return unit && /^[\s\d.,+-]+$/.test(box.value) ? `${box.value.trim()} ${unit.textContent}` : box.value;
};

// What is typed, open and under the reader's hand.
const hold = (old) => ({
  typed: Array.from(old.querySelectorAll("form.record"), (form) => ({
    task: form.elements.task.value,
    pairs: Array.from(form.elements).filter(isTyped).map((box) => [box.name, withUnit(box)]),
    replaces: form.dataset.replaces,
  })).filter((form) => form.pairs.length > 0),
  open: Array.from(old.querySelectorAll("details[open] > summary[id]"), (summary) => summary.id),
  at: old.contains(document.activeElement) ? document.activeElement.id || document.activeElement.closest("form")?.elements.task?.value : "",
});

const goTo = (place, how) => {
  if (place && place.tabIndex < 0) {
    place.tabIndex = -1;
  }
  place?.focus(how);
};

export const stops = () => document.querySelectorAll(".stop").length;

// Shows a view of the page: the address's fragment chooses it.
export const turnTo = (id) => {
  if (window.location.hash !== `#${id}`) {
    window.location.hash = id;
  }
  goTo(document.getElementById(id));
};

// A view that was put in anew is no longer the one that the fragment chose: it is chosen again, and the page stays where it was.
const chooseAgain = () => {
  if (window.location.hash) {
    const [x, y] = [window.scrollX, window.scrollY];
    window.location.replace(window.location.hash);
    window.scrollTo(x, y);
  }
};

// Leads whoever entered something to what follows from it: a new stop, or what is to be done next.
export const arrive = (task, stopsBefore) => {
  if (stops() > stopsBefore) {
    turnTo("stops");
  } else if (document.getElementById(task)?.closest(".task.done")) {
    turnTo("now");
  }
};

// What is typed and not sent yet, for a page that is opened again.
export const typed = () => hold(board()).typed;

export const giveBack = (held) => {
  for (const form of held.typed) {
    const to = formOf(form.task);
    if (to) {
      fill(to, form.pairs);
      if (form.replaces) {
        to.dataset.replaces = form.replaces;
      }
    }
  }
  for (const id of held.open) {
    const fold = document.getElementById(id)?.closest("details");
    if (fold) {
      fold.open = true;
    }
  }
  if (held.at) {
    goTo(document.getElementById(held.at), { preventScroll: true });
  }
};

// Puts the page in place of the old one where anything changed, unless a file is chosen, which a page cannot give back.
// What there is to say of it, in words.
export const refresh = async (address) => {
  try {
    const reply = await fetch(address, { headers: { accept: "text/html" } });
    const text = reply.ok ? await reply.text() : "";
    const fresh = new DOMParser().parseFromString(text, "text/html");
    const [old, now] = [board(), fresh.getElementById("board")];
    const changed = (name) => now && old.dataset[name] !== now.dataset[name];
    const files = Array.from(old.querySelectorAll("input[type=file]")).some((box) => box.files.length > 0);
    if (files || !(changed("revision") || changed("entries"))) {
      return "";
    }
    const held = hold(old);
    const [was, is] = [old.dataset.revision, now.dataset.revision];
    const said = changed("revision")
      ? `The plan was changed: it was revision ${was} and is revision ${is}. What stands here is the new one; look at its figures again before you go on.`
      : "";
    old.replaceWith(now);
    chooseAgain();
    giveBack(held);
    for (const place of ["header", "title"]) {
      const [before, after] = [document.querySelector(place), fresh.querySelector(place)];
      if (before && after) {
        before.replaceWith(after);
      }
    }
    return said;
  } catch {
    // The connection went again: the page stays as it is.
    return "";
  }
};
