// What can go wrong with sound, as a text of the table with its values: says what, where, and the mend.
import { t } from "../texts.js"

/** A sentence from the table of texts stands behind every one of these. */
export class SoundProblem extends Error {
  /** @param {string} key of the text @param {Record<string, any>} [values] its placeholders */
  constructor(key, values = {}) {
    super(key)
    this.key = key
    this.values = values
  }

  /** @returns {string} the sentence */
  words() {
    return t(this.key, this.values)
  }
}
