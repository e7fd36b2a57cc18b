// Both entries start the wasm themselves; what they hand out is what the binding declares.
export * from "./whitehold.js";
