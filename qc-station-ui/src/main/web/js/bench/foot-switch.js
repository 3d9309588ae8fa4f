// A foot switch is a key that means Enter. Which one is chosen on the Bench and remembered; the space bar until then.
import { recall, remember } from "../memory.js"

const KEPT = "footSwitch"
const DEFAULT = " "

/** Keys that have a meaning of their own here. */
const TAKEN = new Set(["Enter", "Escape", "Tab", "Shift", "Control", "Alt", "Meta", "ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "Backspace", "Delete", "CapsLock", "Unidentified", "Process", "Dead", "F9"])

/** @returns {string} as KeyboardEvent.key has it */
export function footSwitch() {
  return recall(KEPT) ?? DEFAULT
}

/** @param {string} key @returns {boolean} whether it may be a foot switch: no key that types, but the space bar, and none that means something else */
export function mayBeFootSwitch(key) {
  return key === DEFAULT || (key.length > 1 && !TAKEN.has(key))
}

/** @param {string} key */
export function chooseFootSwitch(key) {
  remember(KEPT, key)
}

/** @param {KeyboardEvent} event @returns {boolean} */
export function isFootSwitch(event) {
  return event.key === footSwitch() && !event.ctrlKey && !event.altKey && !event.metaKey
}
