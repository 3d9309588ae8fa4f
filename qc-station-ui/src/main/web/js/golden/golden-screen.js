// Golden: built in the next step.
import { put } from "../dom.js"
/** @type {import("../app.js").StartScreen} */
export function startGolden(host) { put(host); return { close() {} } }
