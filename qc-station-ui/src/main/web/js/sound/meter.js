// The level meter: a bar a side with the peak that was held, the number, and what to do in words.
import { el, put, svg } from "../dom.js"
import { db } from "../format.js"
import { t } from "../texts.js"
import { OVERLOAD_DBFS } from "./recorder.js"

const FLOOR_DB = -80
const WIDTH = 320
const HEIGHT = 20

export class LevelMeter {
  #left = new Bar("left")
  #right = new Bar("right")

  constructor() {
    this.element = el("div", { class: "level-meter" }, this.#left.element, this.#right.element)
  }

  /** @param {{ left: import("./levels.js").Level, right: import("./levels.js").Level }} levels */
  show(levels) {
    this.#left.show(levels.left)
    this.#right.show(levels.right)
  }

  /** No device is open. */
  clear() {
    this.#left.clear()
    this.#right.clear()
  }
}

class Bar {
  #rms = svg("rect", { class: "rms", x: 0, y: 0, width: 0, height: HEIGHT })
  #peak = svg("rect", { class: "peak", x: 0, y: 6, width: 0, height: HEIGHT - 12 })
  #hold = svg("rect", { class: "hold", x: 0, y: 0, width: 2, height: HEIGHT })
  #number = el("output", { class: "level" })
  #words = el("span", { class: "level-words", role: "status" })
  #said = ""

  /** @param {"left" | "right"} side */
  constructor(side) {
    this.element = el("div", { class: `level-bar ${side}` }, el("span", { class: "side" }, side === "left" ? t("screen.bench.left") : t("screen.bench.right")),
      svg("svg", { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, preserveAspectRatio: "none", "aria-hidden": "true" },
        svg("rect", { class: "ground", x: 0, y: 0, width: WIDTH, height: HEIGHT }), this.#peak, this.#rms, this.#hold,
        svg("rect", { class: "mark", x: place(OVERLOAD_DBFS), y: 0, width: 2, height: HEIGHT })),
      this.#number, this.#words)
    this.clear()
  }

  /** @param {import("./levels.js").Level} level */
  show(level) {
    this.#rms.setAttribute("width", String(place(level.rmsDb)))
    this.#peak.setAttribute("width", String(place(level.peakDb)))
    this.#hold.setAttribute("x", String(place(level.holdDb)))
    put(this.#number, Number.isFinite(level.holdDb) ? t("screen.sound.meter.level", { level: db(level.holdDb) }) : t("screen.sound.meter.nothing"))
    this.#say(level.holdDb >= OVERLOAD_DBFS ? "overload" : Number.isFinite(level.holdDb) ? "" : "silence")
  }

  clear() {
    this.show({ peakDb: FLOOR_DB, rmsDb: FLOOR_DB, holdDb: FLOOR_DB })
    put(this.#number)
  }

  /** Only what changes is said again. @param {"" | "overload" | "silence"} what */
  #say(what) {
    if (this.#said === what) return
    this.#said = what
    this.element.dataset.state = what
    put(this.#words, what === "overload" ? t("screen.sound.meter.overload") : what === "silence" ? t("screen.sound.meter.silence") : "")
  }
}

/** @param {number} level dB re full scale @returns {number} its place on the bar */
function place(level) {
  return Math.round(WIDTH * Math.min(1, Math.max(0, (level - FLOOR_DB) / -FLOOR_DB)))
}
