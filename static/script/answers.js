// Holds what is typed at a step until the planner has it, and offers it back: whoever leaves by a link, or saves without a
// connection, loses nothing without a word. It lies in this tab alone, under the plan's name and never under its link.
"use strict";

(() => {
  const head = document.querySelector(".masthead [data-plan]");
  const form = document.getElementById("answers");
  if (!head) {
    return;
  }
  const KEY = `stillground.typed.${head.dataset.plan}`;
  const HERE = form ? form.dataset.step : "";
  const MOST = 8;

  const read = () => {
    try {
      const held = JSON.parse(window.sessionStorage.getItem(KEY) || "[]");
      return Array.isArray(held) ? held : [];
    } catch {
      return [];
    }
  };
  const write = (held) => {
    try {
      window.sessionStorage.setItem(KEY, JSON.stringify(held.slice(-MOST)));
    } catch {
      // No room, or a browser that keeps nothing: the form does what any form does.
    }
  };
  const drop = (which) => write(read().filter((one) => !which(one)));

  const typed = () => Array.from(new FormData(form)).filter(([name, value]) => name !== "go" && typeof value === "string");
  const answers = (pairs) => JSON.stringify(pairs.filter(([name]) => name !== "base"));
  const baseOf = (pairs) => Number(pairs.find(([name]) => name === "base")?.[1] || 0);

  // The planner says which step it kept, and on top of which revision.
  const confirm = () => {
    const address = new URL(window.location.href);
    const kept = /^([a-z-]+)-(\d+)$/.exec(address.searchParams.get("saved") || "");
    if (kept) {
      drop((one) => one.sent && one.step === kept[1] && baseOf(one.fields) <= Number(kept[2]));
      address.searchParams.delete("saved");
      window.history.replaceState(window.history.state, "", address);
    }
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

  // The planner fills the page with what is sent so, and keeps nothing.
  const putBack = (one) => {
    write(read().map((other) => (other.id === one.id ? { ...other, sent: true } : other)));
    const back = document.createElement("form");
    back.method = "post";
    back.action = form.action;
    for (const [name, value] of [...one.fields, ["go", "again"]]) {
      const box = document.createElement("input");
      box.type = "hidden";
      box.name = name;
      box.value = value;
      back.append(box);
    }
    document.body.append(back);
    back.submit();
  };

  const offer = () => {
    document.getElementById("typed")?.remove();
    const held = read().filter((one) => one.id !== own);
    if (held.length === 0) {
      return;
    }
    const notice = document.createElement("section");
    notice.id = "typed";
    notice.className = "notice";
    notice.setAttribute("role", "status");
    for (const one of held) {
      const at = new Date(one.at).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
      const here = one.step === HERE;
      const line = element("p", `What you typed at ${here ? "this step" : `“${one.title}”`} at ${at} was not saved. `);
      if (here) {
        line.append(button("Put it back into the form", () => putBack(one)), " ");
      } else {
        const link = element("a", "Go there");
        link.href = `${head.dataset.root}/${one.step.replace("short-", "short/")}`;
        line.append(link, " ");
      }
      line.append(
        button("Throw it away", () => {
          drop((other) => other.id === one.id);
          offer();
        }),
      );
      notice.append(line);
    }
    document.getElementById("content").prepend(notice);
  };

  const own = `${Date.now()}-${Math.random()}`;
  let shown = "";
  const hold = (sent) => {
    const fields = typed();
    const others = read().filter((one) => one.id !== own);
    if (!sent && answers(fields) === shown) {
      write(others);
      return;
    }
    others.push({ id: own, step: HERE, title: form.dataset.title, at: Date.now(), sent, fields });
    write(others);
  };

  confirm();
  if (form) {
    if (form.dataset.typed === "yes") {
      // The page holds what was sent, and it is not kept yet.
      drop((one) => one.step === HERE && one.sent);
      hold(false);
    } else {
      shown = answers(typed());
      drop((one) => one.step === HERE && answers(one.fields) === shown);
    }
    form.addEventListener("input", () => hold(false));
    form.addEventListener("submit", () => hold(true));
  }
  offer();
})();
