// The workbench itself: holds the set that is being changed (A) and the one beside it (B), and keeps plots, numbers and the
// service's word on them together.
import { get, getBytes, postText } from "../api.js"
import { el, put } from "../dom.js"
import { busy, failed, stateOf } from "../states.js"
import { t } from "../texts.js"
import { EdgeTable } from "./edge-table.js"
import { Figures, flipList } from "./figures.js"
import { LimitPlots } from "./limit-plots.js"
import { copyOf, groundOfSet, moved, valueOf } from "./limit-set.js"
import { MoneyPanel } from "./money-panel.js"
import { ProposalPanel } from "./proposal-panel.js"
import { decode } from "./replay.js"
import { Trier } from "./trier.js"
import { UnitsChooser } from "./units-chooser.js"
import { save, Versions } from "./versions.js"
import { YamlDrop } from "./yaml-drop.js"

/** @typedef {import("./limit-set.js").LimitSet} LimitSet @typedef {import("./limit-set.js").Edge} Edge @typedef {import("./replay.js").Outcome} Outcome */

/** The service is asked once nothing has moved for so long. */
const CALM_MS = 600

export class Workbench {
  #product
  #tuning
  #closed = new AbortController()
  #chooser
  #versions
  #figures = new Figures()
  #edges
  #proposal
  #money
  #yaml
  #trier
  #plotRoom = el("div", { class: "limit-plot-room" })
  #flips = el("div", { class: "flip-room" })
  #setHead = el("div", { class: "set-head" })
  #saving = el("div", { class: "set-saving" })
  #told = el("div", { class: "set-told", "aria-live": "polite" })
  /** @type {LimitPlots | null} */
  #plots = null
  /** @type {import("./replay.js").Recorded | null} */
  #recorded = null
  /** @type {LimitSet | null} */
  #a = null
  /** @type {{ set: LimitSet, name: string } | null} */
  #b = null
  /** @type {LimitSet | null} as it was loaded */
  #begun = null
  #begunVersion = 0
  /** @type {Edge | null} */
  #edge = null
  /** @type {{ a: Outcome | null, b: Outcome | null, state: "local" | "asking" | "confirmed" | "service" | "failed" }} */
  #shown = { a: null, b: null, state: "asking" }
  #loaded = 0
  #asked = 0
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #calm
  #yamlText = ""

  /** @param {HTMLElement} host @param {string} product @param {string} tuning @param {Api.BatchSummary[]} batches @param {Record<string, string>} query */
  constructor(host, product, tuning, batches, query) {
    this.#product = product
    this.#tuning = tuning
    const first = batches.find((batch) => batch.batch === query.batch) ?? [...batches].sort((x, y) => y.units - x.units)[0]
    const chosen = { batches: first ? [first.batch] : [], stations: [], from: "", to: "" }
    this.#chooser = new UnitsChooser(batches, chosen, () => this.#loadUnits())
    this.#versions = new Versions(this.#path, `${product}-${tuning}`, this.#closed.signal, {
      onLoad: (version) => this.#take(version), onBeside: (version) => this.#beside(version), onChanged: () => this.#drawSetHead(),
    })
    this.#trier = new Trier(([a, b]) => this.#tried(a, b))
    const handlers = { onChoose: (/** @type {Edge} */ edge) => this.#choose(edge), onMove: (/** @type {Edge} */ edge, /** @type {number} */ db) => this.#move(edge, db) }
    this.#edges = new EdgeTable(handlers)
    this.#proposal = new ProposalPanel(() => this.#address("proposals", { version: String(this.#begunVersion) }), (set) => this.#replace(set))
    this.#money = new MoneyPanel(() => this.#confirm())
    this.#yaml = new YamlDrop(host, (text) => this.#takeYaml(text))
    this.#loadAll(host)
  }

  close() {
    clearTimeout(this.#calm)
    this.#closed.abort()
    this.#trier.close()
  }

  /** @returns {boolean} whether a field had the focus */
  leaveField() {
    const field = document.activeElement
    if (!(field instanceof HTMLInputElement)) return false
    field.blur()
    return true
  }

  get #path() {
    return `/api/products/${encodeURIComponent(this.#product)}/tunings/${encodeURIComponent(this.#tuning)}/limit-sets`
  }

  /** @param {string} what @param {Record<string, string>} [more] */
  #address(what, more = {}) {
    const query = this.#chooser.query()
    query.set("product", this.#product)
    query.set("tuning", this.#tuning)
    for (const [name, value] of Object.entries(more)) query.set(name, value)
    return `/api/batches/${encodeURIComponent(this.#chooser.chosen.batches[0])}/${what}?${query}`
  }

  /** @param {HTMLElement} host */
  async #loadAll(host) {
    put(host, busy(t("screen.limits.loading")))
    try {
      const versions = await this.#versions.load()
      const start = versions.find((version) => version.active) ?? versions[0]
      if (!start) return put(host, stateOf("WAITING", t("screen.limits.noSet.title"), t("screen.limits.noSet.mend")), this.#yaml.element)
      await this.#read(start.version)
      put(host, this.#chooser.element, this.#setHead,
        el("div", { class: "limits-main" },
          el("div", { class: "limits-left" }, this.#plotRoom, this.#edges.element),
          el("aside", { class: "limits-side" }, this.#figures.element, this.#saving)),
        this.#flips, el("div", { class: "limits-panels" }, this.#proposal.element, this.#money.element), this.#versions.element)
      this.#drawSetHead()
      this.#drawSaving()
      if (!this.#chooser.chosen.batches.length) put(this.#plotRoom, stateOf("WAITING", t("screen.limits.noUnits.title"), t("screen.limits.noUnits.mend")))
      else await this.#loadUnits()
    } catch (failure) {
      if (!this.#closed.signal.aborted) put(host, failed(failure, () => this.#loadAll(host)))
    }
  }

  /** @param {number} version */
  async #read(version) {
    const whole = /** @type {Api.LimitSetVersion} */ (await get(`${this.#path}/${version}`, this.#closed.signal))
    this.#begun = /** @type {LimitSet} */ (/** @type {unknown} */ (whole.limitSet))
    this.#begunVersion = version
    this.#a = copyOf(this.#begun)
  }

  async #loadUnits() {
    const mine = ++this.#loaded
    put(this.#plotRoom, busy(t("screen.limits.reading")))
    try {
      const buffer = await getBytes(this.#address("curves.bin", { version: String(this.#begunVersion) }), this.#closed.signal)
      if (mine !== this.#loaded || !this.#a) return
      this.#recorded = decode(buffer.slice(0))
      this.#trier.load(buffer)
      const { units, groups } = this.#recorded.head
      const stations = [...new Set(groups.map((group) => group.station))].sort()
      this.#chooser.tell(t("screen.limits.units.count", { units: units.length, stations: stations.length }), stations)
      this.#plots = new LimitPlots(this.#recorded, this.#a, { onChoose: (edge) => this.#choose(edge), onMove: (edge, db) => this.#move(edge, db) })
      put(this.#plotRoom, this.#plots.element)
      this.#plots.refresh()
      this.#changed()
    } catch (failure) {
      if (mine === this.#loaded && !this.#closed.signal.aborted) put(this.#plotRoom, failed(failure, () => this.#loadUnits()))
    }
  }

  /** @param {Edge} edge */
  #choose(edge) {
    this.#edge = edge
    this.#draw()
  }

  /** @param {Edge} edge @param {number} db */
  #move(edge, db) {
    if (!this.#a) return
    const next = moved(this.#a, edge, db)
    this.#edge = edge
    if (valueOf(next, edge) === valueOf(this.#a, edge)) return this.#draw()
    this.#a = next
    this.#changed()
  }

  /** @param {LimitSet} set */
  #replace(set) {
    this.#a = copyOf(set)
    this.#edge = null
    this.#drawSetHead()
    this.#changed()
    this.#setHead.scrollIntoView({ block: "nearest" })
  }

  /** @param {number} version */
  async #take(version) {
    try {
      await this.#read(version)
      this.#edge = null
      put(this.#told)
      this.#drawSetHead()
      await this.#loadUnits()
    } catch (failure) {
      put(this.#told, failed(failure))
    }
  }

  /** @param {number} version */
  async #beside(version) {
    try {
      const whole = /** @type {Api.LimitSetVersion} */ (await get(`${this.#path}/${version}`, this.#closed.signal))
      this.#setBeside(/** @type {any} */ (whole.limitSet), t("screen.batch.version", { version }))
    } catch (failure) {
      put(this.#told, failed(failure))
    }
  }

  /** @param {LimitSet | null} set @param {string} name */
  #setBeside(set, name) {
    this.#b = set ? { set: copyOf(set), name } : null
    this.#drawSetHead()
    this.#changed()
  }

  /** @param {string} text */
  async #takeYaml(text) {
    const trial = /** @type {Api.Trial} */ (await postText(this.#address("trials"), text, "application/yaml"))
    this.#replace(/** @type {any} */ (trial.limitSet.limitSet))
  }

  /** Something moved: redraw at once, try it, and let the service confirm when the hand rests. */
  #changed() {
    this.#shown.state = "local"
    this.#draw()
    if (this.#recorded && this.#a) {
      const local = (/** @type {LimitSet} */ set) => groundOfSet(set) === groundOfSet(/** @type {LimitSet} */ (this.#recorded?.head.limitSet.limitSet))
      this.#trier.attempt([local(this.#a) ? this.#a : null, this.#b && local(this.#b.set) ? this.#b.set : null])
    }
    clearTimeout(this.#calm)
    this.#calm = setTimeout(() => this.#confirm(), CALM_MS)
  }

  /** @param {Outcome | null} a @param {Outcome | null} b */
  #tried(a, b) {
    this.#shown.a = a
    this.#shown.b = b
    this.#drawFigures()
  }

  async #confirm() {
    if (!this.#recorded || !this.#a) return
    const mine = ++this.#asked, asked = this.#a
    this.#shown.state = "asking"
    this.#drawFigures()
    try {
      const trial = /** @type {Api.Trial} */ (await postText(this.#address("trials", this.#money.query()), JSON.stringify(asked), "application/json"))
      if (mine !== this.#asked || asked !== this.#a) return
      this.#yamlText = trial.limitSet.yaml
      this.#agree(trial)
      put(this.#flips, flipList(trial.flips))
      this.#money.show(trial)
      put(this.#told)
    } catch (failure) {
      if (mine !== this.#asked || this.#closed.signal.aborted) return
      this.#shown.state = "failed"
      this.#drawFigures()
      put(this.#told, failed(failure))
    }
  }

  /** The service's word counts; where it says the same the page says so. @param {Api.Trial} trial */
  #agree(trial) {
    const own = this.#shown.a
    const same = own !== null && own.passed === trial.units.passed && own.failed === trial.units.failed && own.undecided === trial.units.undecided
    if (!same) {
      this.#shown.a = {
        passed: trial.units.passed, failed: trial.units.failed, undecided: trial.units.undecided, conditional: trial.units.conditional,
        toPass: trial.flips.toPass, toFail: trial.flips.toFail, near: 0, verdicts: new Uint8Array(0),
        checks: trial.checks.filter((check) => ["level", "balance", "window", "match"].includes(check.check)),
      }
    }
    this.#shown.state = same ? "confirmed" : "service"
    this.#drawFigures()
  }

  #draw() {
    if (!this.#a) return
    this.#plots?.show(this.#a, this.#b?.set ?? null, this.#edge)
    this.#edges.show(this.#a, this.#edge)
    this.#drawFigures()
  }

  #drawFigures() {
    const units = this.#recorded?.head.units ?? []
    this.#figures.show({ passed: units.filter((unit) => unit.verdict === "PASS").length, of: units.length }, this.#shown.a, this.#b ? this.#shown.b : null, this.#shown.state, this.#begunVersion, this.#b?.name ?? "")
  }

  #drawSetHead() {
    const beside = this.#b
    put(this.#setHead,
      el("p", {}, t("screen.limits.set.a", { version: this.#begunVersion }), beside ? el("span", { class: "quiet" }, ` ${t("screen.limits.set.b", { name: beside.name })}`) : null),
      el("div", { class: "version-actions" },
        el("button", { type: "button", class: "button small", on: { click: () => this.#begun && this.#replace(this.#begun) } }, t("screen.limits.set.reset")),
        el("button", { type: "button", class: "button small keep-b", on: { click: () => this.#setBeside(this.#a, t("screen.limits.set.kept")) } }, t("screen.limits.set.keep")),
        beside ? el("button", { type: "button", class: "button small", on: { click: () => this.#swap() } }, t("screen.limits.set.swap")) : null,
        beside ? el("button", { type: "button", class: "button small", on: { click: () => this.#setBeside(null, "") } }, t("screen.limits.set.drop")) : null),
      this.#yaml.element)
  }

  #swap() {
    const a = this.#a, b = this.#b
    if (!a || !b) return
    this.#b = { set: a, name: t("screen.limits.set.kept") }
    this.#replace(b.set)
  }

  #drawSaving() {
    put(this.#saving, el("h3", {}, t("screen.limits.save.title")), el("p", { class: "quiet" }, t("screen.limits.save.what")),
      el("button", { type: "button", class: "button save-draft", on: { click: () => this.#draft() } }, t("screen.limits.save.draft")),
      el("button", { type: "button", class: "button quiet", on: { click: () => this.#yamlText && save(this.#yamlText, `${this.#product}-${this.#tuning}.yaml`) } }, t("screen.limits.save.yaml")),
      this.#told)
  }

  async #draft() {
    if (!this.#a) return
    put(this.#told, busy(t("screen.limits.versions.sending")))
    try {
      const version = Math.max(0, ...this.#versions.items.map((one) => one.version)) + 1
      const drafted = /** @type {Api.LimitSetVersion} */ (await postText(this.#path, JSON.stringify({ ...this.#a, version }), "application/json"))
      await this.#versions.load()
      put(this.#told, el("p", { class: "drafted", role: "status" }, t("screen.limits.save.done", { version: drafted.version })))
    } catch (failure) {
      put(this.#told, failed(failure))
    }
  }
}
