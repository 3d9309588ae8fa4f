// The level meter's numbers: peak, root mean square, and a peak that is held. Pure.

/** @typedef {{ peakDb: number, rmsDb: number, holdDb: number }} Level dB re full scale (a full-scale sine has a peak of 0 dB and −3 dB r.m.s.); −Infinity for digital silence */

/** A peak stands so long before it falls. */
const HOLD_SECONDS = 1.5

export class Levels {
  #rateHz
  #held = [0, 0]
  /** Frames since the held peak. */
  #since = [0, 0]

  /** @param {number} rateHz */
  constructor(rateHz) {
    this.#rateHz = rateHz
  }

  /** @param {import("./chain.js").MeterNews} news @returns {{ left: Level, right: Level }} */
  take(news) {
    return { left: this.#channel(news, 0), right: this.#channel(news, 1) }
  }

  /** @param {import("./chain.js").MeterNews} news @param {0 | 1} channel @returns {Level} */
  #channel(news, channel) {
    const peak = news.peak[channel]
    this.#since[channel] += news.frames
    if (peak >= this.#held[channel] || this.#since[channel] > HOLD_SECONDS * this.#rateHz) {
      this.#held[channel] = peak
      this.#since[channel] = 0
    }
    return { peakDb: db(peak), rmsDb: db(Math.sqrt(news.square[channel] / news.frames)), holdDb: db(this.#held[channel]) }
  }
}

/** @param {number} amplitude */
function db(amplitude) {
  return 20 * Math.log10(amplitude)
}
