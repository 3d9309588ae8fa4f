// WAV files of one channel of 32-bit floats, as the service reads and writes them. Pure.

const HEAD = 58
const FLOAT = 3

/**
 * The same layout as the service's own files: chunks `fmt ` (18 bytes, tag 3), `fact` (frames), `data`.
 * @param {Float32Array} samples full scale is ±1 @param {number} rateHz a whole number
 * @returns {ArrayBuffer}
 * @throws {RangeError} if there is no sample, or one is not finite: the service would refuse the file
 */
export function encodeWav(samples, rateHz) {
  if (!samples.length || !samples.every(Number.isFinite)) throw new RangeError("a WAV file needs finite samples")
  const bytes = samples.length * 4, file = new ArrayBuffer(HEAD + bytes), view = new DataView(file)
  chunk(view, 0, "RIFF", HEAD - 8 + bytes)
  word(view, 8, "WAVE")
  chunk(view, 12, "fmt ", 18)
  view.setUint16(20, FLOAT, true)
  view.setUint16(22, 1, true)
  view.setUint32(24, rateHz, true)
  view.setUint32(28, rateHz * 4, true)
  view.setUint16(32, 4, true)
  view.setUint16(34, 32, true)
  view.setUint16(36, 0, true)
  chunk(view, 38, "fact", 4)
  view.setUint32(46, samples.length, true)
  chunk(view, 50, "data", bytes)
  for (let n = 0; n < samples.length; n++) view.setFloat32(HEAD + 4 * n, samples[n], true)
  return file
}

/**
 * Reads such a file; other chunks are passed over.
 * @param {ArrayBuffer} file @returns {{ samples: Float32Array, rateHz: number }}
 * @throws {RangeError} if it is anything but mono 32-bit float
 */
export function decodeWav(file) {
  const view = new DataView(file)
  if (file.byteLength < 12 || name(view, 0) !== "RIFF" || name(view, 8) !== "WAVE") throw new RangeError("not a WAV file")
  let rateHz = 0
  for (let at = 12; at + 8 <= file.byteLength;) {
    const size = view.getUint32(at + 4, true), body = at + 8
    if (body + size > file.byteLength) throw new RangeError("the WAV file is cut short")
    if (name(view, at) === "fmt ") {
      if (view.getUint16(body, true) !== FLOAT || view.getUint16(body + 2, true) !== 1 || view.getUint16(body + 14, true) !== 32) {
        throw new RangeError("not a WAV file of one channel of 32-bit floats")
      }
      rateHz = view.getUint32(body + 4, true)
    } else if (name(view, at) === "data") {
      if (!rateHz) throw new RangeError("the WAV file does not say how its samples are stored")
      const samples = new Float32Array(Math.floor(size / 4))
      for (let n = 0; n < samples.length; n++) samples[n] = view.getFloat32(body + 4 * n, true)
      return { samples, rateHz }
    }
    at = body + size + (size & 1)
  }
  throw new RangeError("the WAV file holds no samples")
}

/** @param {DataView} view @param {number} at @param {string} id @param {number} size */
function chunk(view, at, id, size) {
  word(view, at, id)
  view.setUint32(at + 4, size, true)
}

/** @param {DataView} view @param {number} at @param {string} text */
function word(view, at, text) {
  for (let i = 0; i < 4; i++) view.setUint8(at + i, text.charCodeAt(i))
}

/** @param {DataView} view @param {number} at */
function name(view, at) {
  return String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)))
}
