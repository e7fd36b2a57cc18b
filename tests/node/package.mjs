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

test("the types declare every field of an answer, of its picks and of their recipes", async () => {
  const whitehold = await import(new URL(entry.node, folder));
  const types = readFileSync(new URL("whitehold.d.ts", folder), "utf8");
  const room = JSON.parse(readFileSync(new URL("../../data/harbour_lane.json", import.meta.url), "utf8"));
  const report = whitehold.plan(room.orders[0].order);
  const trade = report.trade;
  const rows = [
    ["Report", report],
    ["Pick", report.picks[0]],
    ["Recipe", report.picks[0].recipe],
    ["Setting", report.picks[0].setting],
    ["TradeOff", trade],
    ["Recipe", trade.ways[0].recipe],
  ];
  for (const [name, value] of rows) {
    const [, body] = types.match(new RegExp(`export interface ${name} \\{([^]*?)\\n\\}`));
    for (const field of Object.keys(value)) {
      assert.match(body, new RegExp(`\\b${field}\\??:`), `${name}.${field}`);
    }
  }
});
