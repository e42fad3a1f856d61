// Long parts fold away on a narrow screen, and whatever is folded lies open on paper. Without this everything stays open.
"use strict";

(() => {
  const narrow = window.matchMedia("(max-width: 46rem)");
  const paper = window.matchMedia("print");
  const folds = (selector) => Array.from(document.querySelectorAll(selector));

  // A part that an address or a link points into stays open.
  const aimedAt = () => {
    try {
      return document.getElementById(decodeURIComponent(window.location.hash.slice(1)));
    } catch {
      return null;
    }
  };

  const fit = () => {
    if (paper.matches) {
      return;
    }
    const aimed = aimedAt();
    for (const part of folds("details.part:not(.kept)")) {
      part.open = !narrow.matches || (aimed !== null && part.contains(aimed));
    }
  };

  const show = () => {
    for (let fold = aimedAt()?.closest("details"); fold; fold = fold.parentElement?.closest("details")) {
      fold.open = true;
    }
  };

  let opened = [];
  const open = () => {
    const closed = folds("details:not([open])");
    opened = opened.concat(closed);
    for (const fold of closed) {
      fold.open = true;
    }
  };
  const close = () => {
    for (const fold of opened) {
      fold.open = false;
    }
    opened = [];
  };

  fit();
  narrow.addEventListener("change", fit);
  window.addEventListener("hashchange", show);
  window.addEventListener("beforeprint", open);
  window.addEventListener("afterprint", close);
  paper.addEventListener("change", () => (paper.matches ? open() : close()));
})();
