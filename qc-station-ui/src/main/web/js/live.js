// News of inspections as they happen: server-sent events, and polling for as long as those are away.

const POLL_MS = 3000
const EVENTS = ["attempt", "inspection-closed"]

/**
 * @typedef {"connecting" | "live" | "polling" | "offline"} LiveState
 * @typedef {{ close: () => void }} Live
 */

/**
 * @param {object} handlers
 * @param {(news: Api.LiveEvent) => void} handlers.onNews
 * @param {(state: LiveState) => void} handlers.onState
 * @param {(news: { station: string }) => void} [handlers.onStation] a station told something of itself
 * @param {() => Promise<void>} handlers.poll looks for news itself; rejects when the service is away
 * @returns {Live}
 */
export function listen({ onNews, onState, onStation, poll }) {
  let timer = 0
  let closed = false
  const source = new EventSource("/api/events")

  const stopPolling = () => {
    clearTimeout(timer)
    timer = 0
  }
  const pollOnce = async () => {
    const state = await poll().then(() => "polling", () => "offline")
    if (closed || timer === 0) return
    onState(/** @type {LiveState} */ (state))
    timer = window.setTimeout(pollOnce, POLL_MS)
  }

  onState("connecting")
  source.addEventListener("open", () => {
    stopPolling()
    onState("live")
    poll().catch(() => onState("offline"))   // what happened while nobody listened
  })
  source.addEventListener("error", () => {
    if (closed || timer !== 0) return
    timer = window.setTimeout(pollOnce, 0)
  })
  for (const name of EVENTS) {
    source.addEventListener(name, (event) => onNews(JSON.parse(/** @type {MessageEvent} */ (event).data)))
  }
  if (onStation) source.addEventListener("station", (event) => onStation(JSON.parse(/** @type {MessageEvent} */ (event).data)))
  return {
    close() {
      closed = true
      stopPolling()
      source.close()
    },
  }
}
