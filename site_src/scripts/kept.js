// First on every page, before anything is drawn: how it was opened, and what of its look is kept on this device.

import { make, root } from "./lib/dom.js";
import { dark, show } from "./lib/look.js";
import { takeOlder } from "./lib/storage.js";

document.documentElement.classList.add("scripted");
if (location.protocol === "file:") {
  document.documentElement.classList.add("from-folder"); // no fetches there: browsers refuse them
} else { // the face before the sheet that asks for it: what comes late is not used
  document.head.append(make("link", { rel: "preload", as: "font", type: "font/woff2", crossorigin: "", href: new URL("fonts/hyperlegible-bold.woff2", root).href }));
}
takeOlder();
show();
dark.addEventListener("change", show);
