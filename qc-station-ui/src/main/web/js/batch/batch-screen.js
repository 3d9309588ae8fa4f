// Batch: without a name the list of batches, with one its yield, reasons and clouds of curves.
import { BatchDetail } from "./batch-detail.js"
import { listBatches } from "./batch-list.js"

/** @type {import("../screens.js").StartScreen} */
export function startBatch(host, route) {
  return route.name ? new BatchDetail(host, route.name, route.query) : listBatches(host)
}
