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
/** How the white ages. Colour differences are ΔE00 to the fresh print; every list runs along `days`. */
export interface BleedForecast {
  setting: object | null;
  verdict: "go" | "go-with-check" | "trial" | "refuse";
  film_um: number; blocker_um: number; storage_c: number;
  days: number[]; de00: Spread[]; limit: number;
  grades: { step: string; de00: number }[];
  looked_at_days: number;
  stays_white: number;
  shows: number[];
  first_shows: { early_days: number | null; likely_days: number | null; late_days: number | null };
  /** How many times the likely dye it takes to turn the print or its rim by the day that matters. */
  turns_at_times: number;
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
