// Work that is asked for often and done seldom: one run at a time, the next one not before its time, however many asked.

/**
 * @param {() => Promise<void>} work deals with its own failures
 * @param {number} leastMs from the end of one run to the start of the next; a run that took long is given as long a rest
 * @returns {{ ask: () => void, close: () => void }}
 */
export function coalesced(work, leastMs) {
  let wanted = false, running = false, closed = false, timer = 0, notBefore = 0
  const run = async () => {
    timer = 0
    if (closed || running || !wanted) return
    wanted = false
    running = true
    const begun = performance.now()
    await work().catch(() => undefined)
    const ended = performance.now()
    notBefore = ended + Math.max(leastMs, ended - begun)
    running = false
    plan()
  }
  const plan = () => {
    if (closed || running || !wanted || timer !== 0) return
    timer = window.setTimeout(run, Math.max(0, notBefore - performance.now()))
  }
  return {
    ask() {
      wanted = true
      plan()
    },
    close() {
      closed = true
      clearTimeout(timer)
    },
  }
}
