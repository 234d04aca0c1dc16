// The form's rules, bundled by test_add_rules.py as one object to call from Python.
export { KEYWORDS, findingsOf } from "../../site_src/scripts/add/findings.js";
export { nearest } from "../../site_src/scripts/add/near.js";
export { passes, withNotes } from "../../site_src/scripts/add/schema.js";
export { tidy } from "../../site_src/scripts/add/times.js";
export { toYaml } from "../../site_src/scripts/add/yaml.js";
