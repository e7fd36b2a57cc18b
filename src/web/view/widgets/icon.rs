//! The icons of the page, as the insides of their `svg` elements. None contains words.

use crate::desk::picture::Ink;
use crate::plan::{Code, Verdict};
use leptos::prelude::*;

/// An icon of the given view box; hidden from screen readers, which read the words beside it.
pub fn icon(size: u32, inside: &'static str) -> impl IntoView {
    view! { <svg viewBox=format!("0 0 {size} {size}") aria-hidden="true" inner_html=inside></svg> }
}

pub const BRAND: &str =
    r#"<path class="ic-f" d="M2 2h32v32H2z"/><path class="brand-w" d="M8 9l5 18 5-15 5 15 5-18"/>"#;
pub const JOB: &str =
    r#"<circle class="ic" cx="15" cy="15" r="8.5"/><path class="ic" d="M15 2v26M2 15h26"/>"#;
pub const WINDOW: &str = r#"<path class="ic" d="M4 3v23h23M6 22C14 21 19 15 20 5M13 26c6-2 12-8 13-17"/>"#;
pub const LIBRARY: &str = r#"<path class="ic" d="M4 5h22v6H4zM4 14h22M4 20h22M4 26h22"/>"#;
pub const FORECAST: &str =
    r#"<path class="ic" d="M4 3v23h23"/><path class="ic-f" d="M6 23C12 16 17 15 27 15V6C17 7 10 10 6 20z"/>"#;
pub const SHEET: &str =
    r#"<path class="ic" d="M6 3h18v24H6zM10 9h10M10 14h10M10 19h4"/><path class="ic-f" d="M16 18h5v5h-5z"/>"#;
pub const WRONG: &str = r#"<path class="ic" d="M6 3h13v9M6 3v24h9"/><circle class="ic" cx="20" cy="19" r="5.5"/><path class="ic ic-3" d="M24 23l4 4"/>"#;
pub const SHOP: &str = r#"<path class="ic-f" d="M3 5h10v5H3zM10 13h10v5H10zM16 21h11v5H16z"/>"#;
pub const SETTINGS: &str = r#"<path class="ic" d="M4 8h22M4 15h22M4 22h22"/><circle class="ic-f" cx="10" cy="8" r="3.5"/><circle class="ic-f" cx="20" cy="15" r="3.5"/><circle class="ic-f" cx="12" cy="22" r="3.5"/>"#;
pub const PRINT: &str = r#"<path class="ic" d="M7 8V3h10v5M7 17H3V8h18v9h-4M7 14h10v7H7z"/>"#;
pub const UNDO: &str = r#"<path class="ic" d="M5 9h9a5 5 0 0 1 0 10H9M9 4L4 9l5 5"/>"#;
pub const REDO: &str = r#"<path class="ic" d="M19 9h-9a5 5 0 0 0 0 10h5M15 4l5 5-5 5"/>"#;
pub const THEME: &str =
    r#"<circle class="ic" cx="12" cy="12" r="8.5"/><path class="ic-f" d="M12 3.5a8.5 8.5 0 0 1 0 17z"/>"#;
pub const TICK: &str = r#"<path class="ic ic-3" d="M4 13l5 5L20 6"/>"#;
pub const CROSS: &str = r#"<path class="ic ic-3" d="M5 5l14 14M19 5L5 19"/>"#;
pub const ASK: &str = r#"<circle class="ic" cx="12" cy="12" r="9.5"/><path class="ic" d="M9 9.5a3 3 0 1 1 3.6 3c-.6.2-.6.6-.6 1.5"/><circle class="ic-f" cx="12" cy="17" r="1.4"/>"#;
const HOT: &str = r#"<path class="ic ic-25" d="M4 30h28M9 25c-3-4 3-6 0-10s3-6 0-10M18 25c-3-4 3-6 0-10s3-6 0-10M27 25c-3-4 3-6 0-10s3-6 0-10"/>"#;
pub const WARN: &str = r#"<path class="ic ic-25" d="M18 3L34 32H2z"/><path class="ic ic-3" d="M18 13v9"/><circle class="ic-f" cx="18" cy="27" r="2"/>"#;
const RISING: &str = r#"<path class="ic-f" d="M3 19h22v5H3z"/><path class="ic" d="M8 16V9M14 16V4M20 16v-5M5.5 11.5L8 9l2.5 2.5M11.5 6.5L14 4l2.5 2.5M17.5 13.5L20 11l2.5 2.5"/>"#;
const TAG: &str =
    r#"<path class="ic" d="M3 12L12 3h12v12l-9 9z"/><circle class="ic-f" cx="19" cy="9" r="2"/>"#;
const DRYER_SMALL: &str = r#"<path class="ic" d="M2 20h24M6 8h16v8H6z"/><circle class="ic-f" cx="5" cy="24" r="2.5"/><circle class="ic-f" cx="23" cy="24" r="2.5"/><path class="ic" d="M10 3.5v2M14 3.5v2M18 3.5v2"/>"#;
const FILM: &str =
    r#"<path class="ic" d="M3 10h22v5H3z"/><path class="ic" stroke-dasharray="3 4" d="M3 21h22M3 25h22"/>"#;
/// Pictures of the print run.
pub const NO_BASE: &str = r#"<path class="ic" stroke-dasharray="4 5" d="M14 24h122v10H14z"/>"#;
pub const BASE: &str = r#"<path class="ic" d="M4 34h142"/><path class="ic-f" d="M14 24h122v10H14z"/>"#;
pub const STROKE: &str = r#"<path class="ic" d="M4 34h142"/><path class="ic ic-3" stroke-dasharray="3 4" d="M14 26h122"/><path class="ic-f" d="M84 4l10 0 6 20h-9z"/><path class="ic" d="M24 15h42M58 9l8 6-8 6"/>"#;
pub const SMOOTH: &str = r#"<path class="ic" d="M4 34h142"/><path class="ic-f" d="M14 28h122v5H14z"/><path class="ic" d="M14 22h122"/><path class="ic-f" d="M84 2l10 0 6 18h-9z"/><path class="ic" d="M24 12h42M58 6l8 6-8 6"/>"#;
pub const FLASH: &str = r#"<path class="ic-f" d="M30 2h90v7H30z"/><path class="ic" d="M45 14v4M45 22v4M65 14v4M65 22v4M85 14v4M85 22v4M105 14v4M105 22v4"/><path class="ic" d="M4 38h142"/><path class="ic-f" d="M40 32h70v5H40z"/>"#;
pub const DRY: &str = r#"<path class="ic" d="M30 5h90v20H30z"/><path class="ic" d="M6 33h138"/><circle class="ic" cx="10" cy="38" r="4.5"/><circle class="ic" cx="140" cy="38" r="4.5"/><path class="ic" d="M58 29h34v4H58z"/><path class="ic" d="M60 20v-9M56 14l4-4 4 4M75 20v-9M71 14l4-4 4 4M90 20v-9M86 14l4-4 4 4"/>"#;
pub const DRYER: &str = r#"<path class="ic" d="M30 5h90v20H30z"/><path class="ic" d="M6 33h138"/><circle class="ic" cx="10" cy="38" r="4.5"/><circle class="ic" cx="140" cy="38" r="4.5"/><path class="ic-f" d="M58 29h34v4H58z"/><path class="ic" d="M45 10v10M60 10v10M75 10v10M90 10v10M105 10v10"/>"#;

const GO: &str = r#"<circle class="m-f" cx="48" cy="48" r="31"/><path class="m-t" d="M48 3v90M3 48h90"/><path class="m-k" d="M48 20v56M20 48h56"/>"#;
const CHECK: &str = r#"<circle class="m-f" cx="48" cy="48" r="31"/><path class="m-t" d="M48 3v90M3 48h90"/><path class="m-k" d="M48 20v56M20 48h56"/><circle class="m-t" cx="48" cy="48" r="41" stroke-dasharray="8 6"/>"#;
const TRIAL: &str = r#"<path class="m-f" d="M48 17a31 31 0 0 0 0 62z"/><circle class="m-s" cx="48" cy="48" r="31"/><path class="m-t" d="M48 3v90M79 48h14M3 48h14"/>"#;
const NO: &str = r#"<path class="m-h" d="M15 15h66v66H15z"/><path class="m-h" d="M15 81L81 15"/>"#;
/// The mark while there is no answer.
pub const OPEN: &str = r#"<circle class="m-s" stroke-dasharray="11 8" cx="48" cy="48" r="31"/><path class="m-t" d="M48 3v14M48 79v14M79 48h14M3 48h14"/><path class="m-s" d="M38 41a10 10 0 1 1 14 9c-4 2-4 4-4 7"/><circle class="m-f" cx="48" cy="66" r="4"/>"#;

/// The inside of a verdict's mark.
pub fn mark(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => GO,
        Verdict::GoWithCheck => CHECK,
        Verdict::Trial => TRIAL,
        Verdict::Refuse => NO,
    }
}

/// The colour class of a verdict.
pub fn verdict_class(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go | Verdict::GoWithCheck => "c-go",
        Verdict::Trial => "c-trial",
        Verdict::Refuse => "c-no",
    }
}

/// The icon and the colour class of a reason.
pub fn reason(code: Code) -> (&'static str, &'static str) {
    use Code as C;
    match code {
        C::ClothBleeds
        | C::NothingToBleed
        | C::NoBlocking
        | C::BlockerHelps
        | C::RimBleeds
        | C::ReducerSpoils
        | C::MayGhost => (RISING, "c-dye"),
        C::FusionHolds | C::FusionShort | C::DriftTooWide | C::LowCureHelps | C::ColoursSetHeat => {
            (DRYER_SMALL, "c-fuse")
        }
        C::WindowOpen
        | C::WindowNarrow
        | C::WindowClosed
        | C::WaterSlows
        | C::ComesDamp
        | C::DriedFirst
        | C::HeavyCloth
        | C::ScorchNear
        | C::ShrinkNear
        | C::SoftensNear
        | C::CoatingNear
        | C::OpensCooler
        | C::OpensHotter
        | C::OpensSlower
        | C::OpensFaster
        | C::OpensPreDry
        | C::OpensThinner
        | C::OpensTwoPasses
        | C::OpensLowCure
        | C::MeltsInCure => (DRYER_SMALL, "c-heat"),
        C::DyeUnknown
        | C::FarFromKnown
        | C::LotNew
        | C::EvidenceCounted
        | C::MoneyAddsCare
        | C::MakerWordNeeded => (TAG, "c-trial"),
        _ => (FILM, "c-cloth"),
    }
}

/// The icon of a caution.
pub fn caution(code: Code) -> &'static str {
    match code {
        Code::HotGarments | Code::BeltStop | Code::MeltBurns | Code::HotHold => HOT,
        _ => WARN,
    }
}

/// The hatches of the pictures, once for the whole page.
pub fn hatches() -> impl IntoView {
    let hatch = |ink: Ink, size: u32, turn: i32, lines: &'static str| {
        view! {
            <pattern
                id=format!("h-{}", ink.name())
                width=size
                height=size
                patternUnits="userSpaceOnUse"
                patternTransform=format!("rotate({turn})")
            >
                <path class=format!("h-{}", ink.name()) d=lines></path>
            </pattern>
        }
    };
    view! {
        <svg class="defs" width="0" height="0" aria-hidden="true">
            <defs>
                {hatch(Ink::Fuse, 11, 45, "M1 0v11")}
                {hatch(Ink::Dye, 9, -45, "M1 0v9")}
                {hatch(Ink::Heat, 18, 0, "M0 9h18M9 0v18")}
                {hatch(Ink::Cloth, 8, 45, "M1 0v8")}
            </defs>
        </svg>
    }
}
