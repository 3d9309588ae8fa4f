// Focus is never lost: wherever it goes astray, it comes back to where the keys belong at this step.

export class FocusKeeper {
  #page
  #home
  #closed = new AbortController()

  /** @param {HTMLElement} page @param {() => HTMLElement} home */
  constructor(page, home) {
    this.#page = page
    this.#home = home
    const signal = this.#closed.signal
    for (const name of ["evenpair-keys-closed", "evenpair-dialog-closed"]) document.addEventListener(name, this.#closedDialog, { signal })
    addEventListener("focus", this.#back, { signal })
    document.addEventListener("click", this.#clicked, { signal })
    document.addEventListener("focusout", this.#back, { signal })
  }

  close() {
    this.#closed.abort()
  }

  /** The browser gives the focus back to what opened the dialog; work goes on elsewhere. */
  #closedDialog = () => {
    setTimeout(() => {
      if (!this.#closed.signal.aborted && this.#page.isConnected && !document.querySelector("dialog[open]")) this.#home().focus()
    })
  }

  /** A click on what does nothing takes no focus with it. @param {MouseEvent} event */
  #clicked = (event) => {
    const doing = event.target instanceof Element && event.target.closest("a, button, input, select, textarea, label, summary, dialog, [role=button]")
    if (doing) return this.#back()
    if (document.querySelector("dialog[open]") || !this.#page.isConnected) return
    this.#home().focus()
  }

  /** After the browser has moved the focus itself; a file dialog keeps its button, and an open dialog its own. */
  #back = () => {
    setTimeout(() => {
      if (this.#closed.signal.aborted || !this.#page.isConnected || document.querySelector("dialog[open]")) return
      const at = document.activeElement
      if (at === null || at === document.body || at === document.documentElement || at.id === "main") this.#home().focus()
    })
  }
}
