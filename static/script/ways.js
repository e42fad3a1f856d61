// Asks how far the search is without loading the whole page anew. Without scripts the page loads itself again; this is only quieter.
"use strict";

(() => {
  const PAUSE_MS = 1500;

  const ask = async () => {
    try {
      const reply = await fetch(window.location.href, { headers: { accept: "text/html" } });
      const page = new DOMParser().parseFromString(await reply.text(), "text/html");
      const [here, there] = [document, page].map((one) => one.getElementById("content"));
      if (!reply.ok || !here || !there) {
        window.location.reload();
        return;
      }
      const goes = page.getElementById("going") !== null;
      const [said, says] = [here, there].map((one) => one.querySelector("[role=status]"));
      if (goes && said && says) {
        said.replaceChildren(...says.childNodes);
      } else {
        here.replaceChildren(...there.childNodes);
        document.title = page.title;
      }
      if (goes) {
        window.setTimeout(ask, PAUSE_MS);
      }
    } catch {
      // The service cannot be reached: it is asked again later.
      window.setTimeout(ask, 4 * PAUSE_MS);
    }
  };

  window.setTimeout(ask, PAUSE_MS);
})();
