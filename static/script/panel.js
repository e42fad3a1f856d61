// Shows what the answers decide while they are typed. The page does the same when it is saved; this is only quicker.
"use strict";

(() => {
  const form = document.getElementById("answers");
  const panel = document.getElementById("panel");
  if (!form || !panel || !window.fetch) {
    return;
  }
  const PAUSE_MS = 500;
  let timer = 0;
  let asked = 0;

  const ask = async () => {
    const turn = ++asked;
    const answers = new URLSearchParams(new FormData(form));
    answers.delete("go");
    answers.append("go", "panel");
    try {
      const reply = await fetch(form.action, { method: "POST", body: answers, headers: { accept: "text/html" } });
      if (reply.ok && turn === asked) {
        const open = panel.querySelector("details[open]") !== null;
        panel.innerHTML = await reply.text();
        const how = panel.querySelector("details");
        if (open && how) {
          how.open = true;
        }
      }
    } catch {
      // The service cannot be reached: the panel keeps what it shows, and saving will say so.
    }
  };

  form.addEventListener("input", () => {
    window.clearTimeout(timer);
    timer = window.setTimeout(ask, PAUSE_MS);
  });
})();
