// Stands before the theme's search worker. A page starts with an empty index; the whole one is fetched at the first search.

const SETUP = 0;
const READY = 1;
const RESULT = 3;
const own = new URL(self.location);
const answer = self.postMessage.bind(self);
let loading = null;
let isReady = null; // called when the theme's worker has taken the index in

self.postMessage = (message) => {
  if (message.type === READY && isReady) {
    isReady(); // the page was told so at once, when it set up the empty index
  } else {
    answer(message);
  }
};

function pass(message) {
  self.dispatchEvent(new MessageEvent("message", { data: message }));
}

async function load() {
  self.importScripts(new URL(`../assets/javascripts/workers/${own.searchParams.get("theme")}`, own));
  const response = await fetch(new URL("../search/whole_index.json", own));
  const index = await response.json();
  const taken = new Promise((done) => { isReady = done; });
  pass({ type: SETUP, data: { ...index, options: { suggest: false } } });
  await taken;
}

self.addEventListener("message", (event) => {
  if (!event.isTrusted) {
    return; // passed on by us: for the theme's worker
  }
  event.stopImmediatePropagation();
  if (event.data.type === SETUP) {
    answer({ type: READY });
  } else if (!event.data.data) {
    answer({ type: RESULT, data: { items: [] } }); // every page asks for nothing once
  } else {
    loading ??= load().catch((problem) => {
      loading = null; // no signal, say: the next key tries again
      console.warn(`The search index did not come: ${problem.message}`);
      throw problem;
    });
    loading.then(() => pass(event.data), () => answer({ type: RESULT, data: { items: [] } }));
  }
});
