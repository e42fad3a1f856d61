// Photographs that wait in the browser's own database, since they are too large for the store that keeps the forms.

const MOST_WAITING_BYTES = 64 * 1024 * 1024;
// Longest side that the service keeps, in dots, and how well a picture is written for it.
const KEPT_SIDE = 2048;
const QUALITY = 0.85;

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

export const keep = (one) => shelf("readwrite", (waiting) => waiting.put(one));
export const drop = (id) => shelf("readwrite", (waiting) => waiting.delete(id));

// The photographs of a plan that wait, the oldest first.
export const all = async (plan) => {
  try {
    const found = await shelf("readonly", (waiting) => waiting.getAll());
    return found.filter((one) => one.plan === plan).sort((one, other) => one.at.localeCompare(other.at));
  } catch {
    return [];
  }
};

// The picture on a canvas, upright and on white; none when this browser cannot read it.
const drawn = async (file, side) => {
  try {
    const picture = await window.createImageBitmap(file);
    const ratio = Math.min(1, side / Math.max(picture.width, picture.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(picture.width * ratio));
    canvas.height = Math.max(1, Math.round(picture.height * ratio));
    const pen = canvas.getContext("2d");
    pen.fillStyle = "white";
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    return canvas;
  } catch {
    return null;
  }
};

// The picture as large as it is kept and no larger: a poor connection carries a tenth of it.
const smaller = async (file) => {
  const canvas = await drawn(file, KEPT_SIDE);
  const made = canvas && (await new Promise((done) => canvas.toBlob(done, "image/jpeg", QUALITY)));
  return made && made.size < file.size ? made : file;
};

// Makes a photograph wait: nothing when it does, else why not.
export const wait = async (one, file, largest) => {
  const picture = await smaller(file);
  if (picture.size > largest) {
    return `The file is larger than ${Math.floor(largest / 1024 / 1024)} MiB, which is the limit, and could not be made smaller here. It was not kept; send a smaller copy of it.`;
  }
  const waiting = await all(one.plan);
  if (waiting.reduce((sum, other) => sum + other.bytes.byteLength, picture.size) > MOST_WAITING_BYTES) {
    return "64 MiB of photographs wait already, the most that is kept here. It stays with your other pictures; send it later.";
  }
  try {
    await keep({ ...one, kind: picture.type, bytes: await picture.arrayBuffer() });
  } catch {
    return "This browser has no room for the photograph: it was not kept. It stays with your other pictures; send it later.";
  }
  return "";
};

const blob = (one) => new Blob([one.bytes], { type: one.kind });

export const form = (one) => {
  const body = new FormData();
  for (const [name, value] of one.pairs) {
    body.append(name, value);
  }
  body.append("photo", blob(one), "photograph");
  return body;
};

// A small view of a photograph that was not taken, so that one knows which it is.
export const glance = async (one) => {
  const canvas = await drawn(blob(one), 160);
  if (canvas) {
    canvas.setAttribute("role", "img");
    canvas.setAttribute("aria-label", "The photograph that was not taken");
  }
  return canvas;
};

// Gives a photograph back to the device as a file.
export const save = (one) => {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob(one));
  link.download = `photograph-${one.at.replaceAll(":", "-").slice(0, 19)}${one.kind === "image/png" ? ".png" : one.kind === "image/webp" ? ".webp" : ".jpg"}`;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(link.href), 60000);
};
