// Reads the WAV files of other rigs as far as the browser's own checks need: PCM of 16, 24 or 32 bit, or 32-bit floats; one channel or two. Pure.

const PCM = 1, FLOAT = 3, EXTENSIBLE = 0xfffe

/**
 * @param {ArrayBuffer} file
 * @returns {{ rateHz: number, channels: Float32Array[] } | null} full scale is ±1; null for anything else, which the service will judge or refuse
 */
export function readWav(file) {
  const view = new DataView(file)
  if (file.byteLength < 12 || word(view, 0) !== "RIFF" || word(view, 8) !== "WAVE") return null
  /** @type {{ tag: number, channels: number, rateHz: number, bits: number } | null} */
  let form = null
  for (let at = 12; at + 8 <= file.byteLength;) {
    const size = view.getUint32(at + 4, true), body = at + 8
    if (word(view, at) === "fmt " && body + 16 <= file.byteLength) form = formOf(view, body, size)
    if (word(view, at) === "data") return form && channelsOf(view, body, Math.min(size, file.byteLength - body), form)
    at = body + size + (size & 1)
  }
  return null
}

/** @param {DataView} view @param {number} at @param {number} size */
function formOf(view, at, size) {
  const tag = view.getUint16(at, true)
  return {
    tag: tag === EXTENSIBLE && size >= 26 ? view.getUint16(at + 24, true) : tag, channels: view.getUint16(at + 2, true), rateHz: view.getUint32(at + 4, true), bits: view.getUint16(at + 14, true),
  }
}

/** @param {DataView} view @param {number} from @param {number} size @param {{ tag: number, channels: number, rateHz: number, bits: number }} form */
function channelsOf(view, from, size, { tag, channels, rateHz, bits }) {
  const read = READERS[`${tag}/${bits}`]
  if (!read || channels < 1 || channels > 2) return null
  const step = bits / 8, frames = Math.floor(size / (step * channels))
  return {
    rateHz,
    channels: Array.from({ length: channels }, (_, channel) => Float32Array.from({ length: frames }, (__, n) => read(view, from + (n * channels + channel) * step))),
  }
}

/** @type {Record<string, (view: DataView, at: number) => number>} by format tag and bits */
const READERS = {
  [`${PCM}/16`]: (view, at) => view.getInt16(at, true) / 2 ** 15,
  [`${PCM}/24`]: (view, at) => ((view.getInt8(at + 2) << 16) | view.getUint16(at, true)) / 2 ** 23,
  [`${PCM}/32`]: (view, at) => view.getInt32(at, true) / 2 ** 31,
  [`${FLOAT}/32`]: (view, at) => view.getFloat32(at, true),
}

/** @param {DataView} view @param {number} at */
function word(view, at) {
  return String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)))
}
