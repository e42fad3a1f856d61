// A button beside each address that copies it; without this script the address is marked and copied by hand.
"use strict";

(() => {
  if (!navigator.clipboard) {
    return;
  }
  for (const box of document.querySelectorAll("input.address")) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "minor";
    button.textContent = "Copy";
    const told = document.createElement("span");
    told.setAttribute("role", "status");
    button.addEventListener("click", async () => {
      box.select();
      try {
        await navigator.clipboard.writeText(box.value);
        told.textContent = " Copied.";
      } catch {
        told.textContent = " This browser does not let a page copy: it is marked, copy it by hand.";
      }
    });
    box.after(" ", button, told);
  }
})();
