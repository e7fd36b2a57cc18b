//! Sentences that the screens share.

/// A sentence of the screens. Numbers and names come ready written.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs, reason = "each field is the piece of text of that name")]
pub enum Phrase {
    OutOf {
        count: String,
        of: String,
    },
    FewerThanOne,
    MoreThanNinetyNine,
    /// The label and the colour field name two colours; `chosen` is empty for one that was measured and has no name.
    ColourClash {
        label: String,
        chosen: String,
    },
    TakeColour {
        colour: String,
    },
    To {
        low: String,
        high: String,
    },
    HoldWithin {
        value: String,
    },
    PassCount {
        count: u32,
    },
    /// Water in the cloth before and after this many passes through the dryer.
    DriedIn {
        passes: u32,
        before: String,
        after: String,
    },
    StrokeCount {
        count: u32,
    },
    FlashFor {
        time: String,
    },
    FilmNear {
        film: String,
    },
    TrialSay {
        pieces: u32,
        hours: String,
        oven: String,
        mark: String,
        days: String,
    },
    TrialLook {
        pieces: u32,
    },
    HowSure {
        chance: String,
    },
    BleedAfter {
        days: String,
    },
    LimitAt {
        value: String,
    },
    RulerTitle {
        what: String,
        likely: String,
        low: String,
        high: String,
        limit: String,
    },
    WhiteOf {
        class: String,
        low_cure: bool,
    },
    MixOf {
        class: String,
        parts: Vec<(String, String)>,
    },
    Needs {
        blocker: String,
    },
    OrderLine {
        pieces: String,
        lot: String,
        due: String,
    },
    RoomLeft {
        cooler: Option<String>,
        hotter: Option<String>,
        slower: Option<String>,
        faster: Option<String>,
    },
    Fails {
        what: String,
        value: String,
        limit: String,
    },
    WhereItWorks {
        white: String,
    },
    MapTitle {
        works: Option<(String, String)>,
        set: String,
    },
    MapCaption {
        heat: String,
        belt: String,
        fits: bool,
    },
    Peak {
        value: String,
    },
    InHeat {
        time: String,
    },
    NeedsFused {
        value: String,
    },
    FusedAt {
        time: String,
    },
    NotFusedYet {
        value: String,
    },
    CurveTitle {
        peak: String,
        time: String,
        lag: String,
    },
    FusedTitle {
        end: String,
        when: Option<String>,
    },
    ClothTitle {
        likely: String,
        high: String,
        limit: String,
    },
    OverLimit {
        value: String,
    },
    UnderLimit {
        value: String,
    },
    Garment {
        number: usize,
    },
    DidYouMeanHeat {
        typed: String,
        meant: String,
    },
    Heard {
        verdict: String,
        white: String,
        air: String,
        belt: String,
    },
    HeardNo,
    DryerLine {
        name: String,
        measured: String,
    },
    SetTo {
        air: String,
        belt: String,
    },
    WindowTitle {
        white: String,
    },
    Worth {
        chance: String,
    },
    ForecastTitle {
        white: String,
    },
    DayNumber {
        day: String,
    },
    OnDay {
        day: String,
        value: String,
    },
    StaysWhite {
        chance: String,
    },
    GradeFrom {
        grade: String,
    },
    DaysAt {
        heat: String,
    },
    EyeSees {
        depth: String,
    },
    AgeingSays {
        fresh: String,
        day: String,
        likely: String,
        low: String,
        high: String,
        limit: String,
    },
    FirstShows {
        early: Option<String>,
        likely: Option<String>,
        last: String,
    },
    GhostsOften {
        chance: String,
    },
    CutTitle {
        days: Vec<String>,
    },
}
