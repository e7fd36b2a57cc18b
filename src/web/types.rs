//! The TypeScript declarations of the JS API's types. They are written by hand: the values are serde types of the core,
//! which know no wasm.

use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"
export type Language = "en" | "es";
export type Units = "metric" | "us";
export interface Options { language?: Language; units?: Units; }
export interface WindowOptions extends Options {
  /** Id of the white, where the best pick is not meant. */
  white?: string;
  /** Set point; the robust one where absent. */
  at?: { set_c: number; belt_m_per_min: number };
}
export interface ForecastOptions extends WindowOptions {
  /** Day of printing, `2026-12-04`: with it, the days to look and the due date have dates. */
  printed_on?: string;
}
export interface OvenOptions extends WindowOptions {
  /** Hours in the oven; 24 where absent. */
  hours?: number;
  /** Its temperature, °C; 60 where absent. */
  oven_c?: number;
}
/** Over lots, by the share of cases below: one in ten, one in four, the likely, three in four, nine in ten. */
export interface Spread { low: number; lower: number; likely: number; upper: number; high: number; }
export interface Band { low: number; likely: number; high: number; }
export type Verdict = "go" | "go-with-check" | "trial" | "refuse";
/** Why: a code, what goes into its sentence, and the sentence. */
export interface Reason { code: string; values?: Record<string, number | string>; text: string; }
/** One way to print a garment, by ids: all that is set before the dryer. */
export interface Recipe {
  white: string;
  /** Stretch white that is stirred into it, and its share of the mass, %. */
  mixture?: { stretch: string; percent: number };
  additive: boolean;
  blocker?: string;
  mesh: string;
  strokes: number;
  smoothing: boolean;
  /** Whether the cloth is dried before it is printed. */
  predried: boolean;
}
/** A dryer setting, and how closely it must be held. */
export interface Setting {
  set_c: number; air_c: number; panel_c: number | null; belt_m_per_min: number; dwell_s: number;
  hold_c: number; hold_belt_m_per_min: number;
}
/** One way to print the order, with the margins of its set point. */
export interface Pick {
  /** Place of its garment in the order. */
  garment: number;
  verdict: Verdict;
  recipe: Recipe;
  white: string; name: string; class: string; low_cure: boolean; mix: [string, number][]; additive?: boolean;
  steps: ({ step: string } & Record<string, number | string>)[];
  advice: object[];
  /** `null` where the window is closed. */
  setting: Setting | null;
  look: object | null;
  margins: object[];
  /** Chance that a fault shows after the order has left. */
  fail_later: Band;
  cost_per_print: Band; rate_per_hour: Band;
  first_piece: string[];
  trial: { pieces: number; hours: number; oven_c: number; pass_mark: number; power: number; stands_for_days: number } | null;
  reasons: Reason[];
}
export type Scale = "cost" | "pace" | "hand" | "cover" | "nap" | "finish" | "late";
/** A recipe that was assessed, with its value on every scale. */
export interface RecipeScores extends Record<Scale, number> {
  recipe: Recipe;
  white: string; name: string; blocker: string | null; strokes: number; threads_per_cm: number;
  smoothing: boolean; additive: boolean; dried?: boolean;
  verdict: Verdict;
  /** Whether no other recipe beats it on both scales of the trade-off. */
  front: boolean;
  /** Its place among the picks. */
  pick: number | null;
}
/** The recipes that were assessed, and the two scales between which they are chosen. */
export interface TradeOff {
  compared: number; judged: number; pays: Scale; gets: Scale; ways: RecipeScores[]; say: Reason[];
}
/** The answer to an order. */
export interface Report {
  verdict: Verdict;
  garment: number;
  picks: Pick[];
  rejected: { white: string; name: string; reasons: Reason[] }[];
  /** The candidate whose closed window refuses the order. */
  closed?: Pick;
  /** One plan for all garments, beside one for each. */
  whole?: object;
  trade?: TradeOff;
  to_make_it_possible: Reason[];
  cautions: Reason[];
  /** What is worth finding out, and how far the chance of a late fault could move. */
  unknowns: { ask: Reason; worth: number }[];
  understood: Reason[];
  /** The same of every garment, in the order's sequence. */
  understood_each: Reason[][];
}
/** How the white ages. Colour differences are ΔE00 to the fresh print; every list runs along `days`. */
export interface BleedForecast {
  setting: Setting | null;
  verdict: Verdict;
  film_um: number; blocker_um: number; storage_c: number;
  days: number[]; de00: Spread[]; limit: number;
  grades: { step: string; de00: number }[];
  looked_at_days: number;
  stays_white: number;
  shows: number[];
  first_shows: { early_days: number | null; likely_days: number | null; late_days: number | null };
  /** How many times the likely dye it takes to turn the print or its rim by the day that matters. */
  turns_at_times: number;
  /** Whether it takes more than that: the lot with the most dye that was computed, `turns_at_times` the likely dye, holds. */
  turns_beyond: boolean;
  /** What to look at and expect 1, 7 and 30 days after printing and on the day that matters; dates where `printed_on` is given. */
  follow_up: { day: number; date?: string; de00: Spread; shows: number }[];
  /** The order's due date on the same days; only where `printed_on` is given. */
  leaves?: { date: string; day: number; shows: number };
  cuts: { day: number; height_um: number[]; free_kg_per_m3: number[]; bound_kg_per_m3: number[] }[];
  fresh: object; turned: [object, object, object];
  /** mg per m² of print: heat + own + facing = free + bound; vapour + contact + loose = heat. */
  ledger: Record<"heat_mg_per_m2" | "vapour_mg_per_m2" | "contact_mg_per_m2" | "loose_mg_per_m2" | "own_mg_per_m2"
    | "facing_mg_per_m2" | "free_mg_per_m2" | "bound_mg_per_m2", number>;
  /** The likely case if an unknown of the model were otherwise. */
  worlds: Record<"slow_film" | "fast_film" | "cold" | "hot" | "gated" | "open" | "warmer", number[]>;
  /** White over its blocker: ΔE00 as a meter reads it, and the share of it that an eye sees in so narrow a line. */
  rim: { overhang_mm: number; de00: Spread; seen: number } | null;
  /** A class frequency, no computed one, and what it is made of. */
  ghosting: Record<"frequency" | "class" | "shade" | "damp" | "stacked" | "time", number>;
}
/** What an oven proves: days that it stands for in the film and where cloth lies on it, and chances after its outcome. */
export interface OvenTest {
  hours: number; oven_c: number; ceiling_c: number; over_ceiling: boolean; storage_c: number;
  film_days: Band; cloth_days: number; hours_for_film: Band; hours_for_cloth: number;
  pass_mark: number; power: number; false_alarm: number;
  before: number; after_clean: number | null; after_stained: number | null;
}
export interface MountOptions extends Options {
  styles?: string[];
  theme?: "device" | "light" | "dark";
  standalone?: boolean;
  order?: object;
}
/** What lies under the printed cloth in the dryer: `under_print` of a garment, in an order and in `temperatureHistory`. */
export type UnderPrint = "back-panel" | "nothing" | "board";
/** A colour: L*, a*, b* for D65 and 10°, or text as people type it (`38, 58, 35`, or a swatch of six hexadecimal digits). */
export type Colour = [number, number, number] | string;
/** Thrown, in an array, where a meter's file cannot be read. */
export interface MeterFileProblem { line: number; column: number; value: string; problem: object; message: string; }
/** Thrown, in an array: which field, what stood there, what is wrong, and the way out in words. */
export interface FieldProblem { field: string; value: string; problem: string; message: string; }
"#;

#[wasm_bindgen]
extern "C" {
    /// `Options` of the declaration above.
    #[wasm_bindgen(typescript_type = "Options")]
    pub type JsOptions;
    /// `WindowOptions` of the declaration above.
    #[wasm_bindgen(typescript_type = "WindowOptions")]
    pub type JsWindowOptions;
    /// `ForecastOptions` of the declaration above.
    #[wasm_bindgen(typescript_type = "ForecastOptions")]
    pub type JsForecastOptions;
    /// `OvenOptions` of the declaration above.
    #[wasm_bindgen(typescript_type = "OvenOptions")]
    pub type JsOvenOptions;
    /// `MountOptions` of the declaration above.
    #[wasm_bindgen(typescript_type = "MountOptions")]
    pub type JsMountOptions;
}
