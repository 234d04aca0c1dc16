// What has been written leaves the page: copied, or downloaded as a file.

import { at, say } from "./page.js";
import * as send from "./send.js";
import { showAll } from "./summary.js";

/** @param {import("./add.js").Writing} writing */
export async function copy(writing) {
  showAll(at("form"));
  const done = await send.copy(writing.yaml, at("yaml"));
  say(
    done
      ? "Copied."
      : "This browser does not let the page copy: the text is marked, copy it with the keyboard or a long press.",
  );
}

/** @param {import("./add.js").Writing} writing */
export function download(writing) {
  showAll(at("form"));
  const name = writing.place?.name.split("/").at(-1) ?? "entry.yml";
  send.download(writing.yaml, name);
  say(`Downloaded as ${name}.`);
}
