// The one place that names third-party code: served by the same origin, by full path, so that no import map is needed.
export { default as uPlot } from "/webjars/uplot/1.6.30/dist/uPlot.esm.js"
export { openDB } from "/webjars/idb/7.0.1/build/index.js"
