// Light or dark: as the device is set, unless one was chosen. The style sheets go by `data-look` on the root element.

import { read, write } from "./storage.js";

const SUBJECT = "look";
export const dark = window.matchMedia("(prefers-color-scheme: dark)");

/** What was chosen on this device: "light", "dark", or "" for as the device is set. */
export const chosen = () => read(SUBJECT, "");

export function show() {
  document.documentElement.dataset.look = chosen() || (dark.matches ? "dark" : "light");
}

/** @param {string} look */
export function choose(look) {
  write(SUBJECT, look);
  show();
}
