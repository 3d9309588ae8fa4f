// The page's end of the worker: the newest limits are tried next, those that were overtaken never.

/** @typedef {import("./replay.js").Outcome} Outcome @typedef {import("./limit-set.js").LimitSet} LimitSet */

export class Trier {
  #worker = new Worker(new URL("./replay-worker.js", import.meta.url), { type: "module" })
  #onOutcome
  #sent = 0
  #busy = false
  /** @type {(LimitSet | null)[] | null} */
  #waiting = null

  /** @param {(outcomes: (Outcome | null)[], milliseconds: number) => void} onOutcome of the newest sets that were tried */
  constructor(onOutcome) {
    this.#onOutcome = onOutcome
    this.#worker.addEventListener("message", (event) => {
      this.#busy = false
      if (event.data.id === this.#sent && event.data.outcomes.length) this.#onOutcome(event.data.outcomes, event.data.milliseconds)
      if (this.#waiting) this.#send(this.#waiting)
    })
  }

  /** @param {ArrayBuffer} buffer given away */
  load(buffer) {
    this.#worker.postMessage({ id: -1, buffer }, [buffer])
  }

  /** @param {(LimitSet | null)[]} sets */
  attempt(sets) {
    if (this.#busy) this.#waiting = sets
    else this.#send(sets)
  }

  /** @param {(LimitSet | null)[]} sets */
  #send(sets) {
    this.#waiting = null
    this.#busy = true
    this.#worker.postMessage({ id: ++this.#sent, sets })
  }

  close() {
    this.#worker.terminate()
  }
}
