// Two golden responses against one another: the difference as a curve, and its largest in each region in words.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { failureWords } from "../station/steps.js"
import { localTime, signedDb } from "../format.js"
import { buildChart } from "../plot/chart.js"
import { PlotRoom } from "../plot/room.js"
import { halfSpan } from "../plot/scales.js"
import { t, tOf } from "../texts.js"

/** @param {Api.Comparison | null | undefined} comparison @param {string} title @returns {HTMLElement | null} null where there is nothing to compare with */
export function comparisonBlock(comparison, title) {
  if (!comparison) return null
  const room = new PlotRoom("comparison-room", (host, width, height) => {
    const half = halfSpan(2, 40, comparison.differenceDb)
    return buildChart(host, {
      hz: comparison.frequencyHz, width, height, low: -half, high: half, caption: t("screen.cloud.differenceAxis"),
      lines: [{ name: t("screen.golden.difference"), values: comparison.differenceDb, colour: "difference", width: 2, label: true }],
      bands: [], regions: comparison.regions.map((region) => ({ ...region, failed: false })), specified: null, marks: [],
    }, () => {})
  })
  return el("section", { class: "comparison" }, el("h2", {}, title), el("p", { class: "quiet" }, t("screen.golden.compared", { which: comparison.which, with: comparison.with, offset: signedDb(comparison.offsetDb) })),
    room.element, el("ul", {}, comparison.regions.map((region) => el("li", {}, region.text))))
}

export class VersionCompare {
  #path
  #signal
  #result = el("div", {})

  /** @param {string} path of the golden responses @param {Api.GoldenVersion[]} versions newest first @param {AbortSignal} signal */
  constructor(path, versions, signal) {
    this.#path = path
    this.#signal = signal
    const one = choose("one", t("screen.golden.version"), versions, versions[0]?.version), other = choose("other", t("screen.golden.with"), versions, versions[1]?.version)
    const compare = () => this.#compare(one.value, other.value)
    for (const select of [one, other]) select.addEventListener("change", compare)
    this.element = el("section", { class: "versions" }, el("h2", {}, t("screen.golden.versions")), versionTable(versions),
      versions.length > 1 ? el("div", { class: "version-choice" }, labelled(one, t("screen.golden.version")), labelled(other, t("screen.golden.with"))) : el("p", { class: "quiet" }, t("screen.golden.oneVersion")),
      this.#result)
    if (versions.length > 1) compare()
  }

  /** @param {string} one @param {string} other versions */
  async #compare(one, other) {
    if (one === other) return put(this.#result, el("p", { class: "quiet" }, t("screen.golden.same")))
    try {
      put(this.#result, comparisonBlock(await get(`${this.#path}/${one}/comparison?with=${other}`, this.#signal), t("screen.golden.comparison")))
    } catch (failure) {
      if (!this.#signal.aborted) put(this.#result, failureWords(failure).map((line) => el("p", {}, line)))
    }
  }
}

/** @param {Api.GoldenVersion[]} versions */
function versionTable(versions) {
  return el("table", { class: "list" }, el("thead", {}, el("tr", {}, [t("screen.golden.version"), t("screen.golden.state"), t("screen.golden.name"), t("screen.golden.made")].map((title) => el("th", { scope: "col" }, title)))),
    el("tbody", {}, versions.map((version) => el("tr", {}, el("th", { scope: "row" }, version.version), el("td", {}, tOf("screen.goldenState.", version.active ? "active" : version.state), version.notice ? el("span", { class: "more" }, " ", version.notice) : null), el("td", {}, version.name ?? "", version.built ? el("span", { class: "more" }, " ", t("screen.golden.builtFrom", { units: version.built.units, leftOut: version.built.leftOut.length })) : null), el("td", {}, localTime(version.madeAt))))))
}

/** @param {string} id @param {string} label @param {Api.GoldenVersion[]} versions @param {number | undefined} chosen */
function choose(id, label, versions, chosen) {
  return /** @type {HTMLSelectElement} */ (el("select", { id: `version-${id}`, "aria-label": label }, versions.map((version) => el("option", { value: version.version, selected: version.version === chosen },
    t("screen.golden.option", { version: version.version, state: tOf("screen.goldenState.", version.state) })))))
}

/** @param {HTMLElement} control @param {string} label */
function labelled(control, label) {
  return el("div", { class: "labelled" }, el("label", { for: control.id }, label), control)
}
