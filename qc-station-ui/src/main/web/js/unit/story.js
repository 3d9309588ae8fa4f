// The unit's story: one timeline from its first mounting to its certificate and what came after.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { localTime } from "../format.js"
import { hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"

/** @param {string} serial @param {AbortSignal} signal @returns {HTMLElement} */
export function storySection(serial, signal) {
  const body = el("div", { class: "story-body" }, el("p", { class: "quiet" }, t("screen.story.loading")))
  const load = async () => {
    try {
      const story = /** @type {Api.UnitStory} */ (await get(`/api/units/${encodeURIComponent(serial)}/story`, signal))
      put(body, el("ol", { class: "story-line" }, story.events.map(event)))
    } catch {
      if (!signal.aborted) put(body, el("p", { class: "quiet", role: "alert" }, t("screen.story.failed")), el("button", { type: "button", class: "button", on: { click: load } }, t("screen.again")))
    }
  }
  load()
  return el("section", { class: "story", "aria-labelledby": "story-title" },
    el("header", { class: "story-head" }, el("h2", { id: "story-title" }, t("screen.story.title")),
      el("a", { class: "button", href: hashOf("across", serial) }, t("screen.story.across"))), body)
}

/** @param {Api.StoryEvent} one */
function event(one) {
  const who = one.who ? [one.who.role, one.who.name].filter(Boolean).join(" ") : null
  const state = one.state ?? null
  return el("li", { class: `story-event story-${one.kind}${state ? ` state-${state.toLowerCase()}` : ""}` },
    el("time", { datetime: one.at }, localTime(one.at)),
    el("span", { class: "story-mark" }, state ? shape(state) : el("span", { class: "story-dot" })),
    el("div", {},
      el("p", {}, el("span", { class: "story-kind" }, tOf("screen.story.kind.", one.kind)), state ? el("span", { class: "word" }, tOf("screen.word.", state)) : null),
      el("p", {}, one.text, who ? el("span", { class: "quiet" }, ` ${t("screen.story.by", { who })}`) : null),
      one.facts.length ? facts(one) : null))
}

/** Calibrations fold away; what a verdict rests on stands open. @param {Api.StoryEvent} one */
function facts(one) {
  const list = el("ul", { class: "story-facts" }, one.facts.map((fact) => el("li", { class: fact.held ? null : "expired" }, fact.text,
    fact.at ? el("span", { class: "quiet" }, ` ${fact.until ? t("screen.story.valid", { from: localTime(fact.at), until: localTime(fact.until) }) : localTime(fact.at)}`) : null)))
  return one.kind === "attempt" ? el("details", {}, el("summary", {}, t("screen.story.chain")), list) : list
}
