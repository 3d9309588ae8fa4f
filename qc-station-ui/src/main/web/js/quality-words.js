// Words beside a verdict: conditional states, idle noise with its tones, the spread between seatings.
import { el } from "./dom.js"
import { db, isNumber } from "./format.js"
import { t } from "./texts.js"

/** Words of ILAC-G8 where the result lies inside the guard band. @param {Api.Inspection} inspection @returns {string} empty for a plain verdict */
export function conditionalWords(inspection) {
  if (!inspection.conditional) return ""
  return inspection.verdict === "PASS" ? t("screen.conditional.pass") : inspection.verdict === "FAIL" ? t("screen.conditional.fail") : ""
}

/** @param {Api.Inspection} inspection @returns {HTMLElement | null} null where no idle noise was measured */
export function idleNoiseBlock(inspection) {
  const noise = inspection.idleNoise
  if (!noise || (!noise.left && !noise.right)) return null
  const line = (/** @type {Api.IdleNoise | null | undefined} */ channel, /** @type {string} */ kind, /** @type {string} */ name) => channel && isNumber(channel.dba)
    ? el("li", { class: kind }, el("span", { class: "noise-side" }, name), el("strong", {}, `${db(channel.dba)} dB(A)`),
      isNumber(channel.floorDba) ? el("span", { class: "more" }, t("screen.noise.floor", { floor: channel.floorDba })) : null,
      (channel.tones ?? []).map((tone) => el("span", { class: "tone" }, t(tone.usbFrame ? "screen.noise.usbTone" : "screen.noise.tone",
        { frequency: tone.hz, level: tone.levelDb }))))
    : null
  return el("section", { class: "noise" }, el("h3", {}, t("screen.noise.title")),
    el("ul", {}, line(noise.left, "left", t("screen.bench.left")), line(noise.right, "right", t("screen.bench.right"))))
}

/** A golden response that cannot tell the insertion depth is said so. @param {Api.Inspection} inspection @returns {HTMLElement | null} */
function depthNote(inspection) {
  return inspection.seatings?.depthTold === false ? el("p", { class: "more" }, t("screen.seating.noDepth")) : null
}

/** How far the seatings lie apart, widest first. @param {Api.Inspection} inspection @returns {HTMLElement | null} null for a single seating with nothing to say */
export function spreadBlock(inspection) {
  const spreads = [...(inspection.seatings?.spreadDb ?? [])].sort((a, b) => b.db - a.db)
  if (!spreads.length) return depthNote(inspection)
  return el("section", { class: "spreads" }, el("h3", {}, t("screen.spread.title", { n: inspection.seatings?.valid ?? 0 })),
    el("ul", {}, spreads.map((spread) => el("li", { class: spread.channel }, t("screen.spread.line", {
      channel: spread.channel, region: spread.region, spread: spread.db, frequency: spread.atHz })))), depthNote(inspection))
}
