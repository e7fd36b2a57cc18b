//! Words of the Forecast screen beyond its picture: the chance, the rim, where the dye went, other worlds, when to look.

/// What is said of a forecast. Numbers and days are written already.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum ForecastPhrase {
    /// Chance that it shows before the day that matters.
    ShowsBefore {
        chance: String,
        day: String,
    },
    /// The same for the day that the order leaves.
    ShowsBeforeDue {
        chance: String,
        date: String,
    },
    /// Dye that turns it over the likely dye, one or more.
    TurnsAt {
        times: String,
    },
    /// The likely dye over the dye that turns it.
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
        way: DyePath,
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

/// How most of the dye came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum DyePath {
    Vapour,
    Contact,
    Loose,
}
