// Node's entry: reads the wasm that lies beside this file, so that an import is all it takes.
import { readFileSync } from "node:fs";
import { initSync } from "./whitehold.js";

initSync({ module: readFileSync(new URL("./whitehold_bg.wasm", import.meta.url)) });

export * from "./whitehold.js";
