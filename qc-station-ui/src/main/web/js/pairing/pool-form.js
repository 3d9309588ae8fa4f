// Which earpieces are to be paired, and the proposals made so far.
import { get, post } from "../api.js"
import { walkLinks } from "../bench/choose-station.js"
import { el, put } from "../dom.js"
import { localTime } from "../format.js"
import { takesText } from "../keys.js"
import { go, hashOf } from "../router.js"
import { busy, failed, stateOf } from "../states.js"
import { t, tOf } from "../texts.js"

/** @typedef {{ product: string, name: string, tuning: string }} Part */

const WHICH = ["failed-match", "failed", "all"]

/** @param {HTMLElement} host @param {Record<string, string>} query batch, product, tuning to begin with @returns {import("../screens.js").Screen} */
export function choosePool(host, query) {
  const closed = new AbortController()
  const load = async () => {
    put(host, busy(t("screen.pairing.loading")))
    try {
      const [products, batches, made] = await Promise.all([
        /** @type {Promise<Api.Page<Api.Product>>} */ (get("/api/products", closed.signal)),
        /** @type {Promise<Api.Page<Api.BatchSummary>>} */ (get("/api/batches", closed.signal)),
        /** @type {Promise<Api.Page<Api.PairingSummary>>} */ (get("/api/pairings?limit=20", closed.signal)),
      ])
      put(host, el("section", { class: "page pairing-start" }, el("h1", {}, t("screen.pairing.title")), el("p", {}, t("screen.pairing.why")),
        form(products.items, batches.items, query), earlier(made.items)))
    } catch (failure) {
      if (!closed.signal.aborted) put(host, failed(failure, load))
    }
  }
  load()
  return { close: () => closed.abort(), key: (event) => (takesText(event.target) ? false : walkLinks(host, event)) }
}

/** @param {Api.Product[]} products @param {Api.BatchSummary[]} batches @param {Record<string, string>} query */
function form(products, batches, query) {
  const parts = products.flatMap((product) => product.tunings.map((tuning) => ({ product: product.product, name: product.name, tuning: tuning.tuning })))
  if (!parts.length) return stateOf("WAITING", t("screen.pairing.noProduct.title"), t("screen.pairing.noProduct.mend"))
  const part = choice("pairing-part", t("screen.pairing.part"), parts.map((one, i) => ({ value: String(i), text: `${one.name} \u00b7 ${one.tuning}` })))
  const first = parts.findIndex((one) => one.product === query.product && (!query.tuning || one.tuning === query.tuning))
  part.select.value = String(Math.max(0, first))
  const batch = choice("pairing-batch", t("screen.pairing.batch"), [])
  const which = choice("pairing-which", t("screen.pairing.which"), WHICH.map((value) => ({ value, text: tOf("screen.pairing.which.", value) })))
  const serials = /** @type {HTMLTextAreaElement} */ (el("textarea", { id: "pairing-serials", rows: 4, spellcheck: "false", autocomplete: "off" }))
  const chosen = () => parts[Number(part.select.value)]
  const fillBatches = () => {
    const fitting = batches.filter((one) => one.product === chosen().product && one.tunings.includes(chosen().tuning))
    put(batch.select, el("option", { value: "" }, t("screen.pairing.noBatch")), fitting.map((one) => el("option", { value: one.batch }, `${one.batch} (${one.units})`)))
    batch.select.value = fitting.some((one) => one.batch === query.batch) ? query.batch : fitting[0]?.batch ?? ""
  }
  fillBatches()
  part.select.addEventListener("change", fillBatches)
  const answer = el("div", { class: "pairing-answer", role: "status" })
  const button = /** @type {HTMLButtonElement} */ (el("button", { type: "submit", class: "button primary" }, t("screen.pairing.propose")))
  return el("form", { class: "pairing-form", on: { submit: async (/** @type {Event} */ event) => {
    event.preventDefault()
    button.disabled = true
    put(answer, t("screen.pairing.working"))
    try {
      const named = serials.value.split(/[\s,;]+/).filter(Boolean)
      const pairing = /** @type {Api.Pairing} */ (await post("/api/pairings", {
        product: chosen().product, tuning: chosen().tuning,
        ...(batch.select.value ? { batch: batch.select.value, which: which.select.value } : {}), ...(named.length ? { serials: named } : {}),
      }))
      go("pairing", pairing.id)
    } catch (failure) {
      put(answer, failed(failure))
      button.disabled = false
    }
  } } }, part.element, batch.element, which.element,
  el("div", { class: "pairing-list-field" }, el("label", { for: "pairing-serials" }, t("screen.pairing.serials")), serials), button, answer)
}

/** @param {string} id @param {string} label @param {{ value: string, text: string }[]} options */
function choice(id, label, options) {
  const select = /** @type {HTMLSelectElement} */ (el("select", { id }, options.map((option) => el("option", { value: option.value }, option.text))))
  return { select, element: el("div", {}, el("label", { for: id }, label), select) }
}

/** @param {Api.PairingSummary[]} made */
function earlier(made) {
  if (!made.length) return el("p", { class: "quiet" }, t("screen.pairing.none"))
  return el("section", {}, el("h2", {}, t("screen.pairing.earlier")), el("table", { class: "list" },
    el("thead", {}, el("tr", {}, [t("screen.pairing.when"), t("screen.pairing.part"), t("screen.pairing.pool"), t("screen.pairing.proposed"), t("screen.pairing.gained")]
      .map((title, i) => el("th", { scope: "col", class: i > 1 ? "number" : null }, title)))),
    el("tbody", {}, made.map((one) => el("tr", {},
      el("th", { scope: "row" }, el("a", { class: "row-link", href: hashOf("pairing", one.id) }, localTime(one.createdAt))),
      el("td", {}, `${one.product} \u00b7 ${one.tuning}`), el("td", { class: "number" }, `${one.pool.lefts} + ${one.pool.rights}`),
      el("td", { class: "number" }, one.proposed.pairs), el("td", { class: "number" }, `+${one.gained}`))))))
}
