// The address of the page, written when no more keys come: to write it costs as much as the search itself.

const STILL_MS = 300;

/** @param {() => string} address what stands after "#" */
export function writer(address) {
  let waiting = 0;
  const drop = () => {
    clearTimeout(waiting);
    waiting = 0;
  };
  const write = () => {
    drop();
    const own = address();
    history.replaceState(null, "", own ? `#${own}` : "#");
  };
  const flush = () => (waiting ? write() : undefined);
  window.addEventListener("pagehide", flush);
  return {
    /** Write it soon. */
    soon() {
      clearTimeout(waiting);
      waiting = setTimeout(write, STILL_MS);
    },
    /** Write at once what still waits: "back" leads to what was asked for. */
    flush,
    /** Leave unwritten what waits: an address that was gone to stands before it. */
    drop,
  };
}
