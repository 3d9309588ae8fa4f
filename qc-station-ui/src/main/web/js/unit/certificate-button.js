// Opens a certificate; where there is none, says kindly why.
import { checkPaper, Offline, Problem } from "../api.js"
import { el, put } from "../dom.js"
import { t } from "../texts.js"

/** @param {string} path @param {string} label */
export function certificateButton(path, label) {
  const why = el("p", { class: "paper-why", role: "status" })
  const button = el("button", { type: "button", class: "button paper-button" }, label)
  button.addEventListener("click", async () => {
    put(why, t("screen.certificate.making"))
    try {
      await checkPaper(path)
      put(why)
      open(path, "_blank", "noopener")
    } catch (failure) {
      put(why, failure instanceof Offline ? t("screen.offline.mend") : failure instanceof Problem ? failure.message : t("screen.failed.title"))
    }
  })
  return el("div", { class: "paper-offer" }, button, why)
}
