// Builds elements without markup strings, so that no text is ever read as HTML and no style attribute is written.

const SVG = "http://www.w3.org/2000/svg"

/** @typedef {Node | string | number | null | undefined | false} Child */

/**
 * @param {string} tag
 * @param {Record<string, any>} [props] `class`, `on` (event → listener), `data` (dataset); anything else is an attribute,
 *     left out when null or false, written empty when true
 * @param {...(Child | Child[])} children
 * @returns {HTMLElement}
 */
export function el(tag, props = {}, ...children) {
  return /** @type {HTMLElement} */ (fill(document.createElement(tag), props, children))
}

/**
 * The same for SVG.
 * @param {string} tag @param {Record<string, any>} [props] @param {...(Child | Child[])} children @returns {SVGElement}
 */
export function svg(tag, props = {}, ...children) {
  return /** @type {SVGElement} */ (fill(document.createElementNS(SVG, tag), props, children))
}

/** Replaces what an element holds. @param {Element} parent @param {...(Child | Child[])} children */
export function put(parent, ...children) {
  parent.replaceChildren(...nodes(children))
}

/** @param {Element} element @param {Record<string, any>} props @param {(Child | Child[])[]} children */
function fill(element, props, children) {
  for (const [name, value] of Object.entries(props)) set(element, name, value)
  element.append(...nodes(children))
  return element
}

/** @param {Element} element @param {string} name @param {any} value */
function set(element, name, value) {
  if (value === null || value === undefined || value === false) return
  if (name === "on") {
    for (const [event, listener] of Object.entries(value)) element.addEventListener(event, /** @type {EventListener} */ (listener))
  } else if (name === "data") {
    Object.assign(/** @type {HTMLElement} */ (element).dataset, value)
  } else {
    element.setAttribute(name, value === true ? "" : String(value))
  }
}

/** @param {(Child | Child[])[]} children @returns {(Node | string)[]} */
function nodes(children) {
  return children.flat().filter((child) => child !== null && child !== undefined && child !== false)
    .map((child) => (child instanceof Node ? child : String(child)))
}
