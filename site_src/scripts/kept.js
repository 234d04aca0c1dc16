// First on every page: what the style sheets need to know of how this page was opened.

document.documentElement.classList.add("scripted");
if (location.protocol === "file:") {
  document.documentElement.classList.add("from-folder"); // no search there: browsers refuse workers and fetches
}
