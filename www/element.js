// Defines <whitehold-desk> for a page of one's own: `import "whitehold/element.js"`.
// That page's policy must allow 'wasm-unsafe-eval', and fetching the wasm that lies beside this file.
import { mount } from "./browser.js";
import styles from "./styles.js";

if (!customElements.get("whitehold-desk")) {
  customElements.define(
    "whitehold-desk",
    class extends HTMLElement {
      connectedCallback() {
        if (!this.shadowRoot) mount(this, { styles, standalone: false });
      }
    },
  );
}
