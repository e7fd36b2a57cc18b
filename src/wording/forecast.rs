//! Sentences of the Forecast screen: the chance, the rim, where the dye went, what if, when to look.

/// A sentence of the Forecast screen. Numbers and days come ready written.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum ForecastPhrase {
    /// Chance that the tint shows before the day that matters.
    ShowsBefore {
        chance: String,
        day: String,
    },
    /// The same for the day on which the order is due.
    ShowsBeforeDue {
        chance: String,
        date: String,
    },
    /// Dye that turns the white, as a multiple of the likely dye; one or more.
    TurnsAt {
        times: String,
    },
    /// More than this multiple of the likely dye turns the white: more was not computed.
    TurnsBeyond {
        times: String,
    },
    /// The likely dye, as a multiple of the dye that turns the white; more than one.
    PastFull {
        times: String,
    },
    Rim {
        overhang: String,
        likely: String,
        high: String,
        limit: String,
    },
    RimMetered {
        likely: String,
        share: String,
    },
    Due {
        date: String,
    },
    WhereDyeWent,
    MostCame {
        path: DyePath,
        share: String,
    },
    HeldShare {
        share: String,
    },
    DyeWay,
    DyeAmount,
    ByVapour,
    ByContact,
    Loose,
    SinceOwn,
    SinceFacing,
    FreeNow,
    HeldNow,
    IfOtherwise,
    IfOtherwiseSays {
        least: String,
        most: String,
        world: String,
    },
    AsForecast,
    SlowFilm,
    FastFilm,
    ColdCorner,
    HotCorner,
    GatedFibre,
    OpenAir,
    WarmerStore,
    GateNote,
    WhenToLook,
    WhenToLookSays,
    LookOn,
    Expect,
    BadEndWord,
    OverLimitBy,
    OnCloth {
        low: String,
        likely: String,
        high: String,
        day: String,
    },
    CutSays {
        first: String,
        last: String,
        day: String,
    },
}

/// The path by which most of the dye came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum DyePath {
    Vapour,
    Contact,
    Loose,
}
