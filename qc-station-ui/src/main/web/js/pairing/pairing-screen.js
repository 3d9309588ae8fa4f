// Pairing: a pool of earpieces becomes matched pairs. Without a name the pool is chosen; with one a proposal is shown.
import { choosePool } from "./pool-form.js"
import { Proposal } from "./proposal.js"

/** @type {import("../screens.js").StartScreen} */
export function startPairing(host, route) {
  return route.name ? new Proposal(host, route.name) : choosePool(host, route.query)
}
