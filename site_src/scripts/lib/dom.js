// What every script of a page needs: the way to the site's root, the elements that the page holds, and new ones.

/** The site's root, by the way there that every page names. */
export const root = new URL(document.documentElement.dataset.root ?? "", location.href);

/**
 * The element that a page made by us must hold.
 * @template {Element} [E=HTMLElement]
 * @param {string} selector
 * @param {ParentNode} [within]
 * @returns {E}
 */
export function one(selector, within = document) {
  const found = within.querySelector(selector);
  if (!found) {
    throw new Error(`this page holds no ${selector}`);
  }
  return /** @type {E} */ (found);
}

/**
 * All elements of a selector, as a list.
 * @template {Element} [E=HTMLElement]
 * @param {string} selector
 * @param {ParentNode} [within]
 * @returns {E[]}
 */
export function all(selector, within = document) {
  return /** @type {E[]} */ ([...within.querySelectorAll(selector)]);
}

/**
 * An element with attributes and children; a child that is text stays text.
 * @template {keyof HTMLElementTagNameMap} T
 * @param {T} tag
 * @param {Record<string, string>} attributes
 * @param {...(Node | string)} children
 * @returns {HTMLElementTagNameMap[T]}
 */
export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    element.setAttribute(name, value);
  }
  element.append(...children);
  return element;
}

/** A button that does something, beside what it does it to.
 * @type {(words: string, act: () => void, more?: Record<string, string>) => HTMLButtonElement} */
export function tool(words, act, more = {}) {
  const button = make("button", { type: "button", class: "tool", ...more }, words);
  button.addEventListener("click", act);
  return button;
}
