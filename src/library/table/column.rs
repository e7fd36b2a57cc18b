//! The columns of each kind of record. Tables and the forms on the screen are made from the same rows of
//! names, paths and ranges.

use crate::dryer::bounds as dryer;
use crate::ink::{Mesh, WhiteRecord};
use crate::library::bounds as library;
use crate::library::log::Kind;
use crate::plan::bounds;
use crate::quantity::Bound;
use crate::textile::AREAL_WEIGHT;

/// One column.
#[derive(Clone, Copy, Debug)]
pub struct TableColumn {
    /// Its name in the header of a table.
    pub name: &'static str,
    /// Path of its value in the record: `zones/0/length`.
    pub path: &'static str,
    /// What its cells hold.
    pub what: CellKind,
}

/// What the cells of a column hold.
#[derive(Clone, Copy, Debug)]
pub enum CellKind {
    /// The id of the record.
    Id,
    /// Text.
    Text,
    /// A day of the calendar.
    Day,
    /// Yes or no.
    Flag,
    /// One of these words.
    Word(&'static [&'static str]),
    /// The id of a record of this kind, or any text.
    Of(Kind),
    /// A number.
    Number(Bound),
    /// A whole number.
    Count(Bound),
    /// A number with unit, range and source.
    Sourced(Bound),
    /// The lower end of such a number's range.
    Low,
    /// The upper end.
    High,
    /// Its unit.
    Unit,
    /// Shares of fibres, written as on a label.
    Shares,
    /// A colour by its name.
    Colour,
    /// Readings of a probe, seconds and degrees Celsius: `10 61; 20 98; 30 131`.
    Readings,
}

use CellKind::{
    Colour, Count, Day, Flag, High, Id, Low, Number, Of, Readings, Shares, Sourced, Text, Unit, Word,
};

const fn col(name: &'static str, what: CellKind) -> TableColumn {
    TableColumn { name, path: name, what }
}

const fn at(name: &'static str, path: &'static str, what: CellKind) -> TableColumn {
    TableColumn { name, path, what }
}

/// Constructions, as in `data/constructions.json`.
const CONSTRUCTIONS: &[&str] = &[
    "jersey",
    "interlock",
    "rib",
    "pique",
    "fleece",
    "terry",
    "mesh",
    "tricot",
    "waffle",
    "woven",
    "canvas",
    "twill",
];

const CLASSES: &[&str] = &["polyester", "low-bleed", "non-ghosting", "cotton", "soft", "stretch", "nylon"];

const DYE_CLASSES: &[&str] =
    &["unknown", "low-energy", "medium-energy", "high-energy", "sublimation-printed", "mass-dyed"];

pub(super) const FABRIC: &[TableColumn] = &[
    col("id", Id),
    col("name", Text),
    col("nombre", Text),
    at("composition", "composition_percent", Shares),
    col("construction", Word(CONSTRUCTIONS)),
    at("weight_gsm", "areal_weight", Sourced(AREAL_WEIGHT)),
    at("weight_low_gsm", "areal_weight", Low),
    at("weight_high_gsm", "areal_weight", High),
    col("colour", Colour),
    col("dye_class", Word(DYE_CLASSES)),
    col("source", Text),
];

pub(super) const WHITE: &[TableColumn] = &[
    col("id", Id),
    col("name", Text),
    col("class", Word(CLASSES)),
    col("low_cure", Flag),
    col("price_per_kg", Sourced(library::PRICE)),
    at("price_low", "price_per_kg", Low),
    at("price_high", "price_per_kg", High),
    at("price_unit", "price_per_kg", Unit),
    col("half_fused_c", Sourced(WhiteRecord::HALF_FUSED)),
    col("fusion_time", Sourced(WhiteRecord::FUSION_TIME)),
    col("source", Text),
];

pub(super) const TRIAL: &[TableColumn] = &[
    col("id", Id),
    col("fabric", Of(Kind::Fabric)),
    col("lot", Text),
    col("white", Of(Kind::White)),
    col("printed", Day),
    col("dryer", Of(Kind::Dryer)),
    col("set_c", Number(library::SET)),
    col("belt_m_per_min", Number(library::BELT)),
    col("note", Text),
];

pub(super) const READING: &[TableColumn] = &[
    col("days", Number(bounds::LOOKED_AT)),
    col("pieces", Count(bounds::PIECES)),
    col("turned", Count(library::TURNED)),
    col("delta_e", Number(library::DELTA_E)),
    at("reading_note", "note", Text),
];

const DRYER: &[TableColumn] = &[
    col("name", Text),
    at("length", "zones/0/length", Sourced(dryer::LENGTH)),
    at("length_2", "zones/1/length", Sourced(dryer::LENGTH)),
    at("length_3", "zones/2/length", Sourced(dryer::LENGTH)),
    at("set_low_c", "set_c/0", Number(dryer::SET)),
    at("set_high_c", "set_c/1", Number(dryer::SET)),
    at("belt_low", "belt/speed_m_per_min/0", Number(dryer::BELT_SPEED)),
    at("belt_high", "belt/speed_m_per_min/1", Number(dryer::BELT_SPEED)),
    at("h_top", "zones/0/h_top", Sourced(dryer::H_TOP)),
    at("h_bottom", "zones/0/h_bottom", Sourced(dryer::H_BOTTOM)),
    at("panel_offset", "zones/0/panel_offset", Sourced(dryer::PANEL_OFFSET)),
    at("exchange_factor", "zones/0/exchange_factor", Sourced(dryer::EXCHANGE)),
    at("drift_air", "drift/air", Sourced(dryer::DRIFT)),
    at("belt_stop", "drift/stop", Sourced(dryer::STOP)),
    col("measured", Day),
    col("source", Text),
];

const MESH: &[TableColumn] = &[
    col("id", Id),
    col("threads_per_cm", Sourced(Mesh::THREADS_PER_CM)),
    col("thread", Sourced(Mesh::THREAD)),
    col("thickness", Sourced(Mesh::THICKNESS)),
    col("over_mesh", Sourced(Mesh::OVER_MESH)),
];

const LOT: &[TableColumn] = &[col("name", Text), col("came", Day), col("note", Text)];
const BATCH: &[TableColumn] =
    &[col("name", Text), col("opened", Day), col("left_kg", Number(library::LEFT)), col("note", Text)];
const LOOK: &[TableColumn] = &[col("due", Day), col("done", Day), col("note", Text)];
const CHECK: &[TableColumn] = &[
    col("day", Day),
    col("set_c", Number(library::SET)),
    col("read_c", Number(library::READ)),
    col("note", Text),
];

const PROBE: &[TableColumn] = &[
    col("day", Day),
    col("fabric", Of(Kind::Fabric)),
    col("film_um", Number(library::FILM)),
    at("probe_at", "at", Word(&["film-top", "film-bottom", "cloth"])),
    col("set_c", Number(library::SET)),
    col("belt_m_per_min", Number(library::BELT)),
    col("readings", Readings),
    col("note", Text),
];

/// The columns of a kind of record; empty for kinds that are not written by hand.
#[must_use]
pub fn columns(kind: Kind) -> &'static [TableColumn] {
    match kind {
        Kind::Fabric => FABRIC,
        Kind::White => WHITE,
        Kind::Trial => TRIAL,
        Kind::Reading => READING,
        Kind::Dryer => DRYER,
        Kind::Mesh => MESH,
        Kind::Lot => LOT,
        Kind::Batch => BATCH,
        Kind::FollowUp => LOOK,
        Kind::DailyCheck => CHECK,
        Kind::Calibration => PROBE,
        Kind::Blocker | Kind::Order | Kind::Setting => &[],
    }
}
