// Fourier transform of a power-of-two length, complex, in place (radix 2, decimation in time). Pure.

/** Plans one length; the tables are made once. */
export class Fft {
  #cos
  #sin
  #reversed

  /** @param {number} length a power of two, 2 or more */
  constructor(length) {
    if (length < 2 || (length & (length - 1)) !== 0) throw new RangeError(`length must be a power of two, was ${length}`)
    this.length = length
    this.#cos = new Float64Array(length / 2)
    this.#sin = new Float64Array(length / 2)
    for (let k = 0; k < length / 2; k++) {
      this.#cos[k] = Math.cos((2 * Math.PI * k) / length)
      this.#sin[k] = Math.sin((2 * Math.PI * k) / length)
    }
    this.#reversed = new Uint32Array(length)
    for (let n = 1; n < length; n++) this.#reversed[n] = (this.#reversed[n >> 1] >> 1) | (n & 1 ? length >> 1 : 0)
  }

  /** X[k] = Σ x[n]·e^(−2πikn/N). @param {Float64Array} re @param {Float64Array} im */
  forward(re, im) {
    const length = this.length, reversed = this.#reversed
    for (let n = 0; n < length; n++) {
      const m = reversed[n]
      if (m > n) {
        const a = re[n], b = im[n]
        re[n] = re[m]
        im[n] = im[m]
        re[m] = a
        im[m] = b
      }
    }
    for (let half = 1; half < length; half *= 2) this.#butterflies(re, im, half)
  }

  /** x[n] = (1/N)·Σ X[k]·e^(+2πikn/N). @param {Float64Array} re @param {Float64Array} im */
  inverse(re, im) {
    this.forward(im, re)   // exchanging both parts conjugates the kernel
    for (let n = 0; n < this.length; n++) {
      re[n] /= this.length
      im[n] /= this.length
    }
  }

  /** @param {Float64Array} re @param {Float64Array} im @param {number} half */
  #butterflies(re, im, half) {
    const length = this.length, cos = this.#cos, sin = this.#sin, step = length / (2 * half)
    for (let start = 0; start < length; start += 2 * half) {
      for (let k = 0, table = 0; k < half; k++, table += step) {
        const a = start + k, b = a + half, c = cos[table], s = sin[table]
        const wr = re[b] * c + im[b] * s, wi = im[b] * c - re[b] * s
        re[b] = re[a] - wr
        im[b] = im[a] - wi
        re[a] += wr
        im[a] += wi
      }
    }
  }
}
