// What the strict reader of files refuses whatever the schema says (reader.py, stream.py): characters that cannot be seen,
// a file too large, nesting too deep. Pure.
// eslint-disable-next-line no-control-regex

const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff\r]/;
const NAMES = {
  0x2028: "line separator", 0x2029: "paragraph separator", 0x202a: "left-to-right embedding", 0x202b: "right-to-left embedding",
  0x202c: "pop directional formatting", 0x202d: "left-to-right override", 0x202e: "right-to-left override",
  0x2066: "left-to-right isolate", 0x2067: "right-to-left isolate", 0x2068: "first strong isolate", 0x2069: "pop directional isolate",
  0xfeff: "zero width no-break space",
};

function controlIn(text) {
  const found = CONTROL.exec(text)?.[0];
  if (found === undefined) {
    return null;
  }
  const number = found.charCodeAt(0);
  const name = NAMES[number] ? ` (${NAMES[number]})` : "";
  return `a control character, U+${number.toString(16).toUpperCase().padStart(4, "0")}${name}, stands here`;
}

/** Every text in a value with its path, keys of free names among them. */
function* texts(value, path = []) {
  if (typeof value === "string") {
    yield [value, path];
  } else if (typeof value === "object" && value !== null) {
    for (const [key, inner] of Object.entries(value)) {
      const step = Array.isArray(value) ? Number(key) : key;
      yield* typeof step === "string" ? [[step, [...path, step]]] : [];
      yield* texts(inner, [...path, step]);
    }
  }
}

const depthOf = (value) => (typeof value === "object" && value !== null ? 1 + Math.max(0, ...Object.values(value).map(depthOf)) : 0);

/** Findings on an entry and on its YAML, in the shape that `explain` gives. */
export function limitFindings(entry, yaml, { bytes, depth }) {
  const found = [];
  for (const [text, path] of texts(entry)) {
    const message = controlIn(text);
    if (message) {
      found.push({ code: "control-character", path, at: path, message, mend: "delete it" });
    }
  }
  const whole = { path: [], at: [] };
  if (new TextEncoder().encode(yaml).length > bytes) {
    const most = `${bytes.toLocaleString("en")} bytes (${bytes / 1024} KiB)`;
    found.push({ ...whole, code: "file-too-large", message: `the file has more than ${most}, the most that an entry may have`, mend: "split the entry, or shorten its text" });
  }
  if (depthOf(entry) > depth) {
    found.push({ ...whole, code: "too-deep", message: `nested more than ${depth} deep`, mend: "flatten it: an entry never needs as much" });
  }
  return found;
}
