// Keeps the recorded units and tries limits on them, away from the page's thread.
import { decode, Replay } from "./replay.js"

/** @type {Replay | null} */
let replay = null

addEventListener("message", (event) => {
  const { id, buffer, sets } = event.data
  if (buffer) replay = new Replay(decode(buffer))
  const begun = performance.now()
  const outcomes = replay && sets ? sets.map((/** @type {any} */ set) => (set ? /** @type {Replay} */ (replay).outcome(set) : null)) : []
  postMessage({ id, outcomes, milliseconds: performance.now() - begun })
})
