// The form's rules, bundled by test_add_rules.py as one object to call from Python.
export { KEYWORDS, problemsIn } from "../../site_src/scripts/add/check.js";
export { explain, withNotes } from "../../site_src/scripts/add/explain.js";
export { problem } from "../../site_src/scripts/add/times.js";
export { nearest } from "../../site_src/scripts/add/words.js";
export { toYaml } from "../../site_src/scripts/add/yaml.js";
