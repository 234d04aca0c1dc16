// First on every page, before anything is drawn: how it was opened, and what of its look is kept on this device.

import { dark, show } from "./lib/look.js";

document.documentElement.classList.add("scripted");
if (location.protocol === "file:") {
  document.documentElement.classList.add("from-folder"); // no fetches there: browsers refuse them
}
show();
dark.addEventListener("change", show);
