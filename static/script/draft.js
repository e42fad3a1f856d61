// What is typed into the record and not sent: kept on the device from the first letter, under the plan's name and never
// under the link, so that a page that was closed by mistake gives it back.
import { giveBack as put, typed } from "./board.js";

const key = (plan) => `stillground.draft.${plan}`;

export const keep = (plan) => {
  try {
    window.localStorage.setItem(key(plan), JSON.stringify(typed()));
  } catch {
    // Without room only what was sent is kept.
  }
};

export const giveBack = (plan) => {
  try {
    put({ typed: JSON.parse(window.localStorage.getItem(key(plan)) || "[]"), open: [], at: "" });
  } catch {
    window.localStorage.removeItem(key(plan));
  }
};
