// What a link leads to is seen, whatever folds it stands in.

/** Open the place that the address names, and all that it is folded into. */
export function openNamed() {
  const named = location.hash ? document.getElementById(decodeURIComponent(location.hash.slice(1))) : null;
  /** @type {HTMLDetailsElement | null | undefined} */
  let fold = named?.closest("details");
  if (!fold) {
    return;
  }
  for (; fold; fold = fold.parentElement?.closest("details")) {
    fold.open = true;
  }
  named?.scrollIntoView();
}
