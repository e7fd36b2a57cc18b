// The JS package in Node: an import is all it takes.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

const folder = new URL("../../dist/pkg/", import.meta.url);
const manifest = JSON.parse(readFileSync(new URL("package.json", folder), "utf8"));
const entry = manifest.exports["."];

test("the entry for Node starts the wasm by itself", async () => {
  const whitehold = await import(new URL(entry.node, folder));
  assert.equal(whitehold.version(), manifest.version);
});

test("every file the manifest names is there", () => {
  for (const file of [...Object.values(entry), manifest.types, manifest.exports["./element.js"]]) {
    assert.ok(readFileSync(new URL(file, folder)).length > 0, file);
  }
});

test("the types declare what the package hands out", async () => {
  const whitehold = await import(new URL(entry.node, folder));
  const types = readFileSync(new URL("whitehold.d.ts", folder), "utf8");
  for (const name of Object.keys(whitehold).filter((name) => name !== "initSync")) {
    assert.match(types, new RegExp(`export (function|class) ${name}\\b`), name);
  }
});
