// The browser's entry: fetches the wasm that lies beside this file, so that an import is all it takes.
import init from "./whitehold.js";

await init();

export * from "./whitehold.js";
