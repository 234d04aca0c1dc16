// Writing where something is other than it was, so that a second that changes nothing draws nothing.

/**
 * @param {Element} element
 * @param {string} text
 */
export function put(element, text) {
  if (element.textContent !== text) {
    element.textContent = text;
  }
}
