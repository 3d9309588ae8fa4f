// The tuning's versions: their states, who and why, what changed between two, approval, activation, the way back, YAML.
import { get, getText, post } from "../api.js"
import { el, put } from "../dom.js"
import { localTime } from "../format.js"
import { buildChart, EDGES, groundOf } from "../plot/chart.js"
import { paintBand, paintCurve } from "../plot/paint.js"
import { PlotRoom } from "../plot/room.js"
import { halfSpan, heightFor } from "../plot/scales.js"
import { busy, failed } from "../states.js"
import { t } from "../texts.js"
import { labelled } from "./proposal-panel.js"

/** @typedef {{ onLoad: (version: number) => void, onBeside: (version: number) => void, onChanged: () => void }} Handlers */

export class Versions {
  #path
  #name
  #handlers
  #signal
  /** @type {Api.LimitSetVersion[]} */
  items = []
  #list = el("div", { class: "version-list" })
  #form = el("div", { class: "version-form" })
  #difference = el("div", { class: "version-difference" })

  /** @param {string} path of the tuning's limit sets @param {string} name for files @param {AbortSignal} signal @param {Handlers} handlers */
  constructor(path, name, signal, handlers) {
    this.#path = path
    this.#name = name
    this.#signal = signal
    this.#handlers = handlers
    this.element = el("section", { class: "limit-versions" }, el("h2", {}, t("screen.limits.versions.title")), this.#list, this.#form, this.#difference)
  }

  async load() {
    const page = /** @type {Api.Page<Api.LimitSetVersion>} */ (await get(`${this.#path}?limit=100`, this.#signal))
    this.items = page.items
    this.#draw()
    return this.items
  }

  #draw() {
    put(this.#list, el("table", { class: "list" },
      el("thead", {}, el("tr", {}, ["version", "state", "made", "approved", "actions"].map((key) => el("th", { scope: "col" }, t(`screen.limits.versions.${key}`))))),
      el("tbody", {}, this.items.map((version) => this.#row(version)))))
    if (this.items.length > 1) this.#compare(this.items[0].version, this.items[1].version)
    else put(this.#difference)
  }

  /** @param {Api.LimitSetVersion} v */
  #row(v) {
    const state = v.state === "draft" ? "draft" : v.active ? "active" : "approved"
    const act = (/** @type {string} */ key, /** @type {() => void} */ click) => el("button", { type: "button", class: "button small", data: { act: key, version: v.version }, on: { click } }, t(`screen.limits.versions.${key}`))
    return el("tr", { data: { version: v.version, state } },
      el("th", { scope: "row" }, v.version),
      el("td", {}, el("span", { class: `version-state ${state}` }, t(`screen.limits.state.${state}`)),
        v.state !== "draft" && v.activeFrom && !v.activeFrom.startsWith("1970") ? el("span", { class: "at" }, t("screen.limits.versions.from", { time: localTime(v.activeFrom) })) : null,
        v.state !== "draft" && !v.inLimits ? el("span", { class: "at not-in-files" }, t("screen.limits.versions.notInLimits")) : null),
      el("td", {}, who(v.origin, v.author), el("span", { class: "at" }, localTime(v.madeAt))),
      el("td", {}, v.state === "draft" ? "" : [who(v.approvedBy, v.approver), el("span", { class: "at" }, localTime(v.approvedAt)), v.approvalReason ? el("span", { class: "at" }, v.approvalReason) : null]),
      el("td", {}, el("div", { class: "version-actions" },
        act("load", () => this.#handlers.onLoad(v.version)), act("beside", () => this.#handlers.onBeside(v.version)), act("yaml", () => this.#export(v.version)),
        v.state === "draft" ? act("approve", () => this.#approve(v)) : null,
        v.state !== "draft" ? act("activate", () => this.#activate(v)) : null,
        v.state !== "draft" && !v.active ? act("rollBack", () => this.#rollBack(v)) : null)))
  }

  /** @param {number} version */
  async #export(version) {
    try {
      const yaml = await getText(`${this.#path}/${version}`, "application/yaml", this.#signal)
      save(yaml, `${this.#name}.yaml`)
    } catch (failure) {
      put(this.#form, failed(failure))
    }
  }

  /** @param {Api.LimitSetVersion} v */
  #approve(v) {
    const reason = text("version-reason", "")
    this.#ask(t("screen.limits.versions.approveTitle", { version: v.version }), [labelled(reason, t("screen.limits.versions.reason"))],
      t("screen.limits.versions.approve"), () => post(`${this.#path}/${v.version}/approval`, { reason: reason.value.trim() }))
  }

  /** @param {Api.LimitSetVersion} v */
  #activate(v) {
    const from = /** @type {HTMLInputElement} */ (el("input", { type: "datetime-local", id: "version-from" }))
    this.#ask(t("screen.limits.versions.activateTitle", { version: v.version }), [labelled(from, t("screen.limits.versions.activeFrom"))],
      t("screen.limits.versions.activate"), () => post(`${this.#path}/${v.version}/activation`, from.value ? { from: new Date(from.value).toISOString() } : {}))
  }

  /** @param {Api.LimitSetVersion} v */
  #rollBack(v) {
    this.#ask(t("screen.limits.versions.rollBackTitle", { version: v.version }), [], t("screen.limits.versions.rollBack"),
      () => post(`${this.#path}/${v.version}/roll-back`, {}))
  }

  /** @param {string} title @param {HTMLElement[]} fields @param {string} action @param {() => Promise<unknown>} send */
  #ask(title, fields, action, send) {
    const told = el("div", { class: "form-told" })
    put(this.#form, el("form", { class: "steps", on: { submit: async (/** @type {Event} */ event) => {
      event.preventDefault()
      try {
        put(told, busy(t("screen.limits.versions.sending")))
        await send()
        put(this.#form)
        await this.load()
        this.#handlers.onChanged()
      } catch (failure) {
        put(told, failed(failure))
      }
    } } }, el("h3", {}, title), el("div", { class: "panel-fields" }, fields),
      el("div", { class: "version-actions" }, el("button", { type: "submit", class: "button" }, action), el("button", { type: "button", class: "button quiet", on: { click: () => put(this.#form) } }, t("screen.limits.versions.cancel"))), told))
    const first = /** @type {HTMLElement | null} */ (this.#form.querySelector("input, button"))
    first?.focus()
  }

  /** @param {number} to @param {number} from */
  #compare(to, from) {
    const select = (/** @type {string} */ id, /** @type {number} */ value) => /** @type {HTMLSelectElement} */ (el("select", { id, on: { change: () => show() } },
      this.items.map((v) => el("option", { value: v.version, selected: v.version === value }, t("screen.batch.version", { version: v.version })))))
    const older = select("difference-from", from), newer = select("difference-to", to)
    const body = el("div", { class: "difference-body" })
    const show = async () => {
      put(body, busy(t("screen.limits.versions.comparing")))
      try {
        const found = /** @type {Api.LimitDifference} */ (await get(`${this.#path}/${newer.value}/difference?from=${older.value}`, this.#signal))
        drawDifference(body, found)
      } catch (failure) {
        if (!this.#signal.aborted) put(body, failed(failure))
      }
    }
    put(this.#difference, el("h3", {}, t("screen.limits.versions.difference")),
      el("div", { class: "version-choice" }, labelled(older, t("screen.limits.versions.older")), labelled(newer, t("screen.limits.versions.newer"))), body)
    show()
  }
}

/** @param {HTMLElement} body @param {Api.LimitDifference} d */
function drawDifference(body, d) {
  const room = new PlotRoom("difference-room", (host, width, height) => {
    const half = halfSpan(3, 14, d.from.lowerDb, d.from.upperDb, d.to.lowerDb, d.to.upperDb)
    const wanted = heightFor(groundOf(width, 100).width, 2 * half, 50) + EDGES.top + EDGES.bottom
    if (wanted !== height) {
      room.setHeight(wanted)
      return null
    }
    return buildChart(host, {
      hz: d.frequencyHz, width, height, low: -half, high: half, caption: t("screen.cloud.deviation"), lines: [], bands: [], regions: [], specified: null, marks: [],
      under: (s) => {
        paintBand(s, d.to.lowerDb, d.to.upperDb, { fill: s.colours.window, edge: s.colours["window-edge"] })
        for (const values of [d.to.lowerDb, d.to.upperDb]) paintCurve(s, values, { colour: s.colours.ink, width: 1.8 })
        for (const values of [d.from.lowerDb, d.from.upperDb]) paintCurve(s, values, { colour: s.colours.ink, width: 1.4, dash: [2, 4] })
        paintCurve(s, d.to.matchDb, { colour: s.colours.difference, width: 1.8 })
        paintCurve(s, d.from.matchDb, { colour: s.colours.difference, width: 1.4, dash: [2, 4] })
      },
    }, () => {})
  })
  put(body, el("ul", { class: "difference-words" }, d.words.length ? d.words.map((line) => el("li", {}, line)) : el("li", {}, t("screen.limits.versions.same"))),
    room.element, el("p", { class: "plot-note" }, t("screen.limits.versions.plotLegend")))
  room.refresh()
}

/** @param {string | null} origin @param {string | null} name */
function who(origin, name) {
  return origin === "file" ? t("screen.limits.versions.file") : name ?? t("screen.limits.versions.erased")
}

/** @param {string} id @param {string} value */
function text(id, value) {
  return /** @type {HTMLInputElement} */ (el("input", { type: "text", id, value, autocomplete: "off" }))
}

/** Gives a text as a file, without a blob (the page's policy has none). @param {string} yaml @param {string} name */
export function save(yaml, name) {
  const link = /** @type {HTMLAnchorElement} */ (el("a", { href: `data:application/yaml;charset=utf-8,${encodeURIComponent(yaml)}`, download: name }))
  document.body.append(link)
  link.click()
  link.remove()
}
