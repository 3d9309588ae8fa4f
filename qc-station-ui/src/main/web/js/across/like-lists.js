// Units like this one, in three orders, with what of them was shipped; each list leaves as CSV.
import { el, put } from "../dom.js"
import { db, localTime } from "../format.js"
import { hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"

/** @typedef {"uneven" | "difference" | "shape"} Order */

export class LikeLists {
  #across
  #choices = el("div", { class: "views", role: "group", "aria-label": t("screen.across.like") })
  #body = el("div", { class: "like-body" })
  /** @type {Order} */
  #order = "uneven"

  /** @param {Api.UnitAcross} across */
  constructor(across) {
    this.#across = across
    this.element = el("section", { class: "like-lists" }, el("h2", {}, t("screen.across.like")), this.#choices, this.#body)
    this.#draw()
  }

  #draw() {
    const names = { uneven: t("screen.across.like.uneven", { region: this.#across.region ?? "" }), difference: t("screen.across.like.difference"), shape: t("screen.across.like.shape") }
    put(this.#choices, /** @type {Order[]} */ (["uneven", "difference", "shape"]).map((order) => el("button", {
      type: "button", class: "button view", "aria-pressed": String(order === this.#order), on: { click: () => { this.#order = order; this.#draw() } } }, names[order])))
    const units = { uneven: this.#across.asUneven, difference: this.#across.alikeInDifference, shape: this.#across.alikeInShape }[this.#order]
    const csv = `/api/units/${encodeURIComponent(this.#across.serial)}/across.csv?${new URLSearchParams({ tuning: this.#across.tuning, by: this.#order })}`
    put(this.#body, el("p", { class: "like-tools" },
      el("a", { class: "button", href: csv, download: "" }, t("screen.across.csv")), el("a", { class: "button", href: `${csv}&shipped=true`, download: "" }, t("screen.across.csv.shipped"))),
    units.length ? table(units, this.#order) : el("p", { class: "quiet" }, t("screen.across.like.none")))
  }
}

/** @param {Api.AcrossUnit[]} units @param {Order} order */
function table(units, order) {
  return el("table", { class: "list" },
    el("thead", {}, el("tr", {}, [t("screen.across.column.serial"), t("screen.across.column.verdict"), t("screen.across.column.batch"), t("screen.across.column.when"),
      order === "uneven" ? t("screen.across.column.worst") : t("screen.across.column.distance"), t("screen.across.column.shipped")]
      .map((title, i) => el("th", { scope: "col", class: i === 4 ? "number" : null }, title)))),
    el("tbody", {}, units.map((unit) => el("tr", {},
      el("th", { scope: "row" }, el("a", { class: "row-link", href: hashOf("unit", unit.serial, { inspection: unit.inspection }) }, unit.serial)),
      el("td", {}, el("span", { class: `outcome state-${unit.verdict.toLowerCase()}` }, shape(unit.verdict), tOf("screen.word.", unit.verdict))),
      el("td", {}, unit.batch), el("td", {}, localTime(unit.at)), el("td", { class: "number" }, `${db(unit.db)} dB`),
      el("td", {}, unit.shipped.length ? unit.shipped.map((one) => `${one.reference}, ${localTime(one.shippedAt)}`).join("; ") : el("span", { class: "quiet" }, t("screen.across.notShipped")))))))
}
