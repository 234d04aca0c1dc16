// Whether what is kept stays: a browser may throw it away when it needs room, unless it grants lasting storage.

/** Ask for it; a sentence where it was refused, "" where it was granted. */
export async function askToLast() {
  try {
    if (await navigator.storage?.persisted?.()) {
      return "";
    }
    return (await navigator.storage?.persist?.()) ? "" : "This browser did not promise to keep it: it may go when the device needs room. Take it along now and then.";
  } catch {
    return "This browser did not promise to keep it: take it along now and then.";
  }
}
