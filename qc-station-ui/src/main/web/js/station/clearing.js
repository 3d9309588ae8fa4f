// A blocked station: why, who can clear it, and the form that does.
import { post } from "../api.js"
import { el } from "../dom.js"
import { localTime } from "../format.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"
import { Steps } from "./steps.js"

/** Words by which a block may be cleared. */
const REASONS = ["gain-restored", "part-replaced", "cleaned", "calibrator-at-fault", "reference-unit-at-fault", "seated-wrong", "checked-and-accepted"]

/** @param {string} station @param {Api.Block[]} blocks @param {() => void} cleared @returns {HTMLElement | null} */
export function blockPanel(station, blocks, cleared) {
  if (!blocks.length) return null
  const clearable = blocks.some((block) => block.cause !== "verification-missing")
  const form = new Steps({
    title: t("screen.clearing.title"), why: t("screen.clearing.why"), action: t("screen.clearing.action"),
    steps: [
      { text: t("screen.clearing.reason"), fields: [{ name: "reason", label: t("screen.field.reason"), kind: "select", options: REASONS.map((word) => [word, tOf("station.clearing.", word)]) }] },
      { text: t("screen.clearing.engineer"), fields: [] },
    ],
    send: async (values) => {
      await post(`/api/stations/${encodeURIComponent(station)}/clearing`, values)
      return { state: "VALID", words: [t("screen.clearing.done")] }
    },
  }, cleared)
  return el("section", { class: "blocked state-blocked" },
    el("div", {}, el("h2", {}, shape("BLOCKED"), t("screen.blocked.title")),
      el("ul", {}, blocks.map((block) => el("li", {}, block.text, block.since ? el("span", { class: "more" }, " ", t("screen.blocked.since", { when: localTime(block.since) })) : null)))),
    clearable ? form.element : null)
}
