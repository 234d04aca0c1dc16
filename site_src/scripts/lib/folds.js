// What a link leads to is seen, whatever folds it stands in.

/** The element that the address names; null where it names none, or is no address: a lone % in it. */
export function named() {
  try {
    return location.hash ? document.getElementById(decodeURIComponent(location.hash.slice(1))) : null;
  } catch {
    return null;
  }
}

/** Open the place that the address names, and all that it is folded into. */
export function openNamed() {
  const place = named();
  /** @type {HTMLDetailsElement | null | undefined} */
  let fold = place?.closest("details");
  if (!fold) {
    return;
  }
  for (; fold; fold = fold.parentElement?.closest("details")) {
    fold.open = true;
  }
  place?.scrollIntoView();
}
