// Comes to the run's page when a log entry is to be written: the library that writes YAML is heavy, and most runs never need it.

import { toYaml } from "../add/yaml.js";

document.documentElement.dataset.writesEntries = "yes";
document.addEventListener("deck-almanac:entry", (event) => {
  const asking = /** @type {CustomEvent<{entry: import("../add/schema.js").Fields, text: string}>} */ (event).detail;
  asking.text = toYaml(asking.entry);
});
