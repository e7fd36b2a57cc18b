// Many orders through the JS package: every answer comes, and memory stays flat.
// A few here; ten thousand take minutes: node --expose-gc tests/node/many_orders.mjs 10000
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

const whitehold = await import(new URL("../../dist/pkg/node.js", import.meta.url));
const { orders } = JSON.parse(readFileSync(new URL("../../data/harbour_lane.json", import.meta.url), "utf8"));
const { whites, blockers } = whitehold.starterLibrary();
const shelf = [...whites, ...blockers].map(({ id }) => id);
const count = Number(process.argv[2] ?? 120);

// All that the process holds, the wasm's own memory with it.
const megabytes = () => {
  globalThis.gc?.();
  return process.memoryUsage().rss / 1e6;
};

test(`${count} orders over a shelf of ${shelf.length} tubs`, () => {
  const times = [];
  const memory = [];
  const every = Math.ceil(count / 20);
  for (let n = 0; n < count; n += 1) {
    const { order } = orders[n % orders.length];
    const garments = order.garments.map((garment) => ({ ...garment, pieces: 1 + ((n * 37) % 500) }));
    const start = performance.now();
    const report = whitehold.plan({ ...order, garments, shop: { ...order.shop, shelf } });
    times.push(performance.now() - start);
    assert.ok(report.picks.length > 0 || report.to_make_it_possible.length > 0);
    if (n % every === every - 1) memory.push(megabytes());
  }
  times.sort((a, b) => a - b);
  const at = (share) => times[Math.ceil(share * times.length) - 1].toFixed(1);
  console.log(`median ${at(0.5)} ms, 95 of 100 within ${at(0.95)} ms; MB: ${memory.map((size) => size.toFixed(1)).join(" ")}`);
  // The wasm's own memory grows while the first orders are answered, and never after; the rest is what the collector left.
  const settled = memory.slice(Math.floor(memory.length / 4));
  assert.ok(Math.max(...settled) < 1.25 * Math.min(...settled) + 8, "memory grows");
});
