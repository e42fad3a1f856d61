// Places, posts and the route on a drawing of the floor, moved by finger, mouse and keys. The boxes below are what is
// sent; they follow the drawing and the drawing follows them. Without this script the boxes alone say the same.
"use strict";

(() => {
  const form = document.getElementById("answers");
  const frame = document.getElementById("floor-plan");
  const panel = document.getElementById("panel");
  if (!form || !frame) {
    return;
  }
  const SIDE = 320;
  const { unit } = frame.dataset;
  const number = (name) => Number(frame.dataset[name]);
  const [length, width, pier] = ["length", "width", "pier"].map(number);
  const STEP = unit === "m" ? 0.1 : 0.5;
  const LISTS = [
    { list: "floor.stands", east: ".x_m", north: ".y_m", what: "Place", mark: "stand" },
    { list: "floor.walk", east: "[0]", north: "[1]", what: "Corner of the route", mark: "corner" },
    { list: "floor.supports", east: "[0]", north: "[1]", what: "Post", mark: "post" },
  ];

  const box = (name) => form.elements[name];
  // A bare figure, or one with the unit of the box; anything else is left to whoever typed it.
  const value = (one) => {
    const said = one?.value.trim().replace("−", "-").replace(",", ".") || "";
    const found = /^([-+]?\d*\.?\d+)\s*([a-z]*)$/.exec(said);
    return found && (found[2] === "" || found[2] === unit) ? Number(found[1]) : NaN;
  };
  const say = (figure) => `${Math.round(figure * 100) / 100}`;

  const points = () =>
    LISTS.flatMap((kind) => {
      const found = [];
      for (let row = 0; box(`${kind.list}[${row}]${kind.east}`); row += 1) {
        const at = `${kind.list}[${row}]`;
        const [east, north] = [box(at + kind.east), box(at + kind.north)];
        const name = box(`${at}.name`)?.value || "";
        const [x, y] = [value(east), value(north)];
        if (Number.isFinite(x) && Number.isFinite(y)) {
          found.push({ kind, row, name, east, north, x, y, id: at });
        }
      }
      return found;
    });

  const made = (name, given, text) => {
    const one = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (const [key, what] of Object.entries(given)) {
      one.setAttribute(key, what);
    }
    if (text) {
      one.textContent = text;
    }
    return one;
  };

  const svg = made("svg", { viewBox: `0 0 ${SIDE} ${SIDE}`, role: "group", "aria-label": "The floor from above, north at the top" });
  const told = document.createElement("p");
  told.setAttribute("role", "status");
  const star = document.createElement("p");
  star.className = "star";
  const hint = frame.querySelector(".hint");
  const moving = hint.textContent;
  let reach = 2;
  let grip = null;

  const across = (x) => SIDE / 2 + (x / reach) * (SIDE / 2);
  const down = (y) => SIDE / 2 - (y / reach) * (SIDE / 2);
  const title = (point) => `${point.kind.what} ${point.row + 1}${point.name ? `, ${point.name}` : ""}`;
  const where = (point) => `${title(point)}: ${say(point.x)} ${unit} east, ${say(point.y)} ${unit} north`;

  const rect = (x, y, w, h, name) =>
    made("rect", { x: across(x - w / 2), y: down(y + h / 2), width: across(w) - across(0), height: across(h) - across(0), class: name });

  const ground = () => {
    const parts = [rect(0, 0, length, width, "block"), made("circle", { cx: across(0), cy: down(0), r: across(pier) - across(0), class: "pier" })];
    // Five rings at most, so that their figures stand clear of each other.
    const every = [1, 2, 5, 10, 20, 50, 100].find((one) => reach / one <= 5) || reach;
    for (let ring = every; ring < reach; ring += every) {
      parts.push(made("circle", { cx: across(0), cy: down(0), r: across(ring) - across(0), class: "ring" }));
      parts.push(made("text", { x: across(0) + 3, y: down(ring) + 12 }, `${ring} ${unit}`));
    }
    parts.push(made("text", { x: SIDE / 2 - 4, y: 14, "text-anchor": "end" }, "N"));
    return parts;
  };

  const shape = (point) => {
    const [x, y] = [across(point.x), down(point.y)];
    const group = made("g", { class: point.kind.mark, tabindex: "0", role: "button", "aria-label": `${where(point)}. Arrow keys move it.` });
    group.dataset.id = point.id;
    // The finger needs more room than the mark.
    group.append(made("circle", { cx: x, cy: y, r: 16, class: "touch" }));
    const mark = point.kind.mark === "post" ? made("rect", { x: x - 6, y: y - 6, width: 12, height: 12 }) : made("circle", { cx: x, cy: y, r: point.kind.mark === "stand" ? 9 : 6 });
    // A corner's number stands at the other side, since a place is often at a corner.
    const [aside, anchor] = point.kind.mark === "corner" ? [-12, "end"] : [12, "start"];
    group.append(mark, made("text", { x: x + aside, y: y + 5, "text-anchor": anchor }, `${point.row + 1}`));
    return group;
  };

  const draw = (held) => {
    const all = points();
    if (!grip) {
      const far = all.map((point) => Math.max(Math.abs(point.x), Math.abs(point.y)));
      reach = Math.max(length, width, 2 * STEP * 10, ...far) * 1.15;
    }
    hint.textContent = all.length > 0 ? moving : "Nothing is placed yet. Say below where people stand or walk.";
    const route = all.filter((point) => point.kind.mark === "corner").map((point) => `${across(point.x)},${down(point.y)}`);
    svg.replaceChildren(...ground(), made("polyline", { points: route.join(" "), class: "route" }), ...all.map(shape));
    if (held) {
      Array.from(svg.querySelectorAll("g")).find((one) => one.dataset.id === held)?.focus();
    }
  };

  const move = (id, x, y) => {
    const point = points().find((one) => one.id === id);
    if (!point) {
      return;
    }
    [point.east.value, point.north.value] = [say(x), say(y)];
    point.east.dispatchEvent(new Event("input", { bubbles: true }));
    told.textContent = where({ ...point, x, y });
  };

  svg.addEventListener("keydown", (event) => {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
    const point = points().find((one) => one.id === event.target.dataset?.id);
    if (way && point) {
      event.preventDefault();
      const step = event.shiftKey ? STEP / 10 : STEP;
      move(point.id, point.x + way[0] * step, point.y + way[1] * step);
      draw(point.id);
    }
  });

  const place = (event) => {
    const room = svg.getBoundingClientRect();
    const of = (at, from, size) => ((at - from) / size - 0.5) * 2 * reach;
    const to = (figure) => Math.max(-reach, Math.min(reach, Math.round(figure / (STEP / 2)) * (STEP / 2)));
    return [to(of(event.clientX, room.left, room.width)), to(-of(event.clientY, room.top, room.height))];
  };

  svg.addEventListener("pointerdown", (event) => {
    grip = event.target.closest("g")?.dataset.id || null;
    if (grip) {
      event.preventDefault();
      svg.setPointerCapture(event.pointerId);
    }
  });
  svg.addEventListener("pointermove", (event) => {
    if (grip) {
      move(grip, ...place(event));
      draw();
    }
  });
  const let_go = () => {
    const held = grip;
    grip = null;
    if (held) {
      draw(held);
    }
  };
  svg.addEventListener("pointerup", let_go);
  svg.addEventListener("pointercancel", let_go);

  // What the star does, as the panel has it.
  const follow = () => {
    const rows = Array.from(panel?.querySelectorAll("table.figures tbody tr") || []).slice(0, 3);
    star.textContent = rows.map((row) => row.textContent.replace(/\s+/g, " ").trim()).join(" · ");
  };
  if (panel) {
    new MutationObserver(follow).observe(panel, { childList: true });
  }

  form.addEventListener("input", (event) => event.target.name?.startsWith("floor.") && !grip && !svg.contains(document.activeElement) && draw());
  frame.append(svg, told, star);
  frame.hidden = false;
  draw();
  follow();
})();
