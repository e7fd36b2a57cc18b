// Ten orders end to end through the JS package: the same answers that the page gives.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

const whitehold = await import(new URL("../../dist/pkg/node.js", import.meta.url));
const room = JSON.parse(readFileSync(new URL("../../data/harbour_lane.json", import.meta.url), "utf8"));
const orders = new Map(room.orders.map(({ id, order }) => [id, order]));

// What a careful press lead would accept, and why: the table that the native tests and the stories read too.
const { rows } = JSON.parse(readFileSync(new URL("../ten_orders.json", import.meta.url), "utf8"));

for (const { id, order, verdict, first } of rows) {
  test(`${id} ${order}`, () => {
    const report = whitehold.plan(orders.get(id), { language: "en" });
    assert.equal(report.verdict, verdict);
    if (first.length === 0) {
      assert.equal(report.picks.length, 0);
      assert.ok(report.to_make_it_possible.length > 0);
      return;
    }
    const [pick] = report.picks;
    assert.ok(first.includes(pick.white), pick.white);
    assert.ok(pick.setting.dwell_s > 25 && pick.setting.dwell_s < 110);
    assert.ok(pick.reasons.every((reason) => reason.text.length > 0), "every reason has its sentence");
    const window = whitehold.cureWindow(orders.get(id));
    const fusion = window.walls.find((wall) => wall.what === "fusion");
    assert.equal(fusion.values.length, window.set_c.length * window.belt_m_per_min.length);
  });
}

test("an order that cannot be read says which field and why, in the language asked for", () => {
  const order = structuredClone(orders.get("1185"));
  order.garments[0].label = "80 % algodón 40 % poliéster";
  assert.throws(
    () => whitehold.plan(order, { language: "es" }),
    (errors) => errors[0].field === "garments[0].label" && errors[0].message.includes("120"),
  );
});

test("markup in a name stays text", () => {
  const order = structuredClone(orders.get("1185"));
  order.garments[0].lot = "<img src=x onerror=alert(1)>";
  assert.equal(whitehold.plan(order).verdict, "go");
});

test("the white ages as its own margin says, and an oven says what it stands for", () => {
  const order = structuredClone(orders.get("1187") ?? orders.get("1185"));
  order.garments[0].label = "100% polyester interlock 150 g/m2";
  order.garments[0].colour = { name: "red" };
  const { white, margins } = whitehold.plan(order).picks[0];
  const aged = whitehold.forecast(order, { white });
  const day = aged.days.indexOf(aged.looked_at_days);
  const margin = margins.find((margin) => margin.what === "bleed");
  // The forecast follows the dryer anew, to the solver's tolerance.
  assert.ok(Math.abs(aged.de00[day].likely - margin.likely) < 1e-4 * margin.likely);
  assert.equal(aged.de00.length, aged.days.length);
  const oven = whitehold.acceleratedTest(order, { white, hours: 24, oven_c: 60 });
  assert.ok(oven.cloth_days > oven.film_days.likely && oven.film_days.likely > 20);
  assert.equal(whitehold.acceleratedTest(order, { white, oven_c: 80 }).after_clean, null);
});
