// One shape a state, so that the word and the colour are never alone. Colours come from the style sheet through the class.
import { svg } from "./dom.js"

/** @type {Record<string, () => SVGElement[]>} */
const DRAWINGS = {
  PASS: () => [
    svg("circle", { cx: 24, cy: 24, r: 21, class: "solid" }),
    svg("path", { d: "M14 25l7 7 14-16", class: "cut" }),
  ],
  FAIL: () => [
    svg("rect", { x: 4, y: 4, width: 40, height: 40, rx: 5, class: "solid" }),
    svg("path", { d: "M15 15l18 18M33 15L15 33", class: "cut" }),
  ],
  RESEAT: () => [
    svg("path", { d: "M39.6 17A17.5 17.5 0 1 0 41.5 24", class: "line" }),
    svg("path", { d: "M41.8 6.5v12h-12", class: "line" }),
  ],
  INVALID: () => [
    svg("circle", { cx: 24, cy: 24, r: 20, class: "line dashed" }),
    svg("path", { d: "M13 35l22-22", class: "line" }),
  ],
  VALID: () => [
    svg("circle", { cx: 24, cy: 24, r: 20, class: "line thin" }),
    svg("path", { d: "M14 25l7 7 14-16", class: "line" }),
  ],
  HELD: () => [
    svg("circle", { cx: 24, cy: 24, r: 20, class: "line" }),
    svg("path", { d: "M24 11v13l9 5", class: "line" }),
  ],
  INCOMPLETE: () => [
    svg("circle", { cx: 24, cy: 24, r: 20, class: "line" }),
    svg("path", { d: "M24 12v12l8 6", class: "line" }),
  ],
  WAITING: () => [
    svg("path", { d: "M5 16V5h11M32 5h11v11M43 32v11H32M16 43H5V32", class: "line thin" }),
    svg("path", { d: "M15 15v18M21 15v18M26 15v18M33 15v18", class: "line thin" }),
  ],
  BUSY: () => [
    svg("circle", { cx: 24, cy: 24, r: 20, class: "line faint" }),
    svg("path", { d: "M24 4a20 20 0 0 1 20 20", class: "line turning" }),
  ],
  BLOCKED: () => [
    svg("path", { d: "M15.3 3h17.4L45 15.3v17.4L32.7 45H15.3L3 32.7V15.3z", class: "solid" }),
    svg("path", { d: "M13 24h22", class: "cut" }),
  ],
  PROBLEM: () => [
    svg("path", { d: "M24 5l20 37H4z", class: "line thin" }),
    svg("path", { d: "M24 18v12M24 35v1.5", class: "line thin" }),
  ],
  OFFLINE: () => [
    svg("path", { d: "M6 19a27 27 0 0 1 36 0M13 27a17 17 0 0 1 22 0M20 35a6 6 0 0 1 8 0", class: "line thin" }),
    svg("path", { d: "M8 42L40 6", class: "line thin" }),
  ],
}

/** @param {string} state PASS, FAIL, RESEAT, INVALID, VALID, HELD, INCOMPLETE, WAITING, BUSY, BLOCKED, PROBLEM, OFFLINE @returns {SVGElement} */
export function shape(state) {
  const known = DRAWINGS[state] ? state : "INCOMPLETE"
  return svg("svg", { class: `shape state-${known.toLowerCase()}`, viewBox: "0 0 48 48", "aria-hidden": "true", "data-shape": known },
    DRAWINGS[known]())
}
