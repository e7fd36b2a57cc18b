//! The words of labels, folded, and what they mean.

use crate::textile::{Construction, Fibre};
use Construction as C;
use Fibre as F;

/// What a word or phrase of a label means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Meaning {
    /// A fibre by its generic name or a true synonym.
    Fibre(Fibre),
    /// A fibre code: one only in capitals and beside a number.
    Code(Fibre),
    /// A word for one of several fibres, the likeliest first.
    Loose(&'static [Fibre]),
    /// Several fibres in one word, in this order.
    Blend(&'static [Fibre]),
    /// A word that stands for shares.
    Shares(&'static [(Fibre, f64)]),
    /// `other fibres`
    Other,
    /// `the rest`: what is missing from 100.
    Rest,
    /// `all`, `pure`: 100 where a fibre follows.
    All,
    /// How the cloth is made.
    Construction(Construction),
    /// A part of the garment, with its name in English; the body's name is empty.
    Section(&'static str),
    /// A word that names a part only before a colon.
    Before(&'static str),
    /// `exclusive of`, `except`
    Except,
    /// Heather.
    Heather,
    /// Printed by sublimation.
    Sublimation,
    /// Understood, changes nothing, worth saying.
    Dropped,
    /// Says nothing.
    Noise,
}

/// Loose `poly`: most often polyester.
const POLY: &[Fibre] = &[F::Polyester, F::Nylon, F::Polypropylene];

/// Words and phrases, folded. Fibre names: ISO 2076, EU 1007/2011 annex I (English and Spanish) and 16 CFR 303.7, from
/// memory; the rest: common practice, no source.
pub(super) const WORDS: &[(Meaning, &[&str])] = {
    use Meaning::{
        All, Before, Blend, Code, Construction, Dropped, Except, Fibre, Heather, Loose, Noise, Other, Rest,
        Section, Shares, Sublimation,
    };
    &[
        (Fibre(F::Cotton), &["cotton", "algodon", "cottons"]),
        (Fibre(F::Linen), &["linen", "flax", "lino"]),
        (Fibre(F::Hemp), &["hemp", "canamo", "true hemp"]),
        (
            Fibre(F::Viscose),
            &[
                "viscose",
                "rayon",
                "viscosa",
                "bamboo",
                "bambu",
                "bamboo viscose",
                "viscose rayon",
                "rayon viscose",
                "rayon from bamboo",
                "viscose from bamboo",
                "viscosa de bambu",
                "rayon de bambu",
            ],
        ),
        (Fibre(F::Modal), &["modal"]),
        (Fibre(F::Lyocell), &["lyocell", "liocel"]),
        (Fibre(F::Polyester), &["polyester", "poliester", "rpet", "pet", "polyesters"]),
        (Fibre(F::Nylon), &["nylon", "polyamide", "poliamida", "nailon", "nilon", "polyamide nylon"]),
        (Fibre(F::Elastane), &["elastane", "spandex", "elastano", "elastan", "elasthane"]),
        (Fibre(F::Acrylic), &["acrylic", "acrilico", "acrilica", "modacrylic", "modacrilico", "modacrilica"]),
        (Fibre(F::Polypropylene), &["polypropylene", "polipropileno", "olefin", "olefina"]),
        (
            Fibre(F::Wool),
            &[
                "wool",
                "lana",
                "merino",
                "merino wool",
                "lana merino",
                "cashmere",
                "cachemira",
                "alpaca",
                "mohair",
            ],
        ),
        (Fibre(F::Silk), &["silk", "seda"]),
        (Fibre(F::Acetate), &["acetate", "acetato", "triacetate", "triacetato"]),
        (Code(F::Cotton), &["co"]),
        (Code(F::Linen), &["li"]),
        (Code(F::Hemp), &["ha"]),
        (Code(F::Viscose), &["cv", "vi"]),
        (Code(F::Modal), &["cmd"]),
        (Code(F::Lyocell), &["cly"]),
        (Code(F::Polyester), &["pes", "pl"]),
        (Code(F::Nylon), &["pa"]),
        (Code(F::Elastane), &["el", "ea"]),
        (Code(F::Acrylic), &["pan", "mac"]),
        (Code(F::Polypropylene), &["pp"]),
        (Code(F::Wool), &["wo", "wv"]),
        (Code(F::Silk), &["se"]),
        (Code(F::Acetate), &["ca", "cta"]),
        (Loose(POLY), &["poly", "poli"]),
        (Loose(&[F::Acrylic, F::Acetate]), &["ac"]),
        (Blend(&[F::Polyester, F::Cotton]), &["polycotton", "policotton", "polialgodon"]),
        (Blend(&[F::Cotton, F::Polyester]), &["cvc"]),
        (
            Shares(&[(F::Polyester, 50.0), (F::Cotton, 25.0), (F::Viscose, 25.0)]),
            &["triblend", "tri blend", "trimezcla", "tri mezcla"],
        ),
        (
            Other,
            &[
                "other fibres",
                "other fibers",
                "other fibre",
                "other fiber",
                "otras fibras",
                "otra fibra",
                "unspecified fibres",
                "mixed fibres",
                "mixed fibers",
                "fibras varias",
                "other",
                "otros",
                "otras",
            ],
        ),
        (Rest, &["rest", "the rest", "remainder", "balance", "resto", "el resto"]),
        (All, &["all", "pure", "todo", "puro", "pura"]),
        (Construction(C::Jersey), &["jersey", "single jersey", "punto liso", "punto jersey"]),
        (Construction(C::Interlock), &["interlock", "double knit", "doble punto"]),
        (Construction(C::Rib), &["rib", "ribbed", "rib knit", "canale", "acanalado"]),
        (Construction(C::Pique), &["pique", "polo knit", "pikee"]),
        (
            Construction(C::Fleece),
            &[
                "fleece",
                "felpa",
                "felpa perchada",
                "brushed fleece",
                "polar",
                "polar fleece",
                "forro polar",
                "hoodie",
                "sudadera",
                "sweatshirt",
            ],
        ),
        (
            Construction(C::Terry),
            &["terry", "french terry", "felpa rizada", "felpa francesa", "loopback", "loop back", "rizo"],
        ),
        (Construction(C::Mesh), &["mesh", "malla", "birdseye", "bird eye", "bird's eye", "eyelet"]),
        (Construction(C::Tricot), &["tricot", "warp knit"]),
        (Construction(C::Waffle), &["waffle", "thermal", "nido de abeja", "gofrado", "panal"]),
        (
            Construction(C::Woven),
            &[
                "woven",
                "plain weave",
                "poplin",
                "popelina",
                "taffeta",
                "tafetan",
                "ripstop",
                "tejido plano",
                "oxford",
                "chambray",
                "batista",
            ],
        ),
        (Construction(C::Canvas), &["canvas", "duck", "lona"]),
        (Construction(C::Twill), &["twill", "sarga", "denim", "mezclilla", "gabardina", "drill"]),
        (
            Section(""),
            &[
                "body",
                "shell",
                "outer",
                "outer shell",
                "cuerpo",
                "exterior",
                "tejido exterior",
                "main fabric",
                "tela principal",
                "tejido principal",
                "self",
            ],
        ),
        (Section("lining"), &["lining", "liner", "forro", "forro interior"]),
        (Section("cuffs"), &["cuff", "cuffs", "punos", "puno"]),
        (Section("collar"), &["collar", "cuello"]),
        (Section("hood"), &["hood", "hood lining", "capucha"]),
        (Section("sleeves"), &["sleeve", "sleeves", "mangas", "manga"]),
        (Section("pocket"), &["pocket", "pockets", "bolsillo", "bolsillos"]),
        (Section("filling"), &["filling", "fill", "relleno"]),
        (Section("insert"), &["insert", "inserts", "inserto", "side panel", "side panels"]),
        (Section("trim"), &["trim", "trims", "ribete", "ribetes", "contrast", "contraste"]),
        (Section("waistband"), &["waistband", "pretina", "cintura"]),
        (Section("decoration"), &["decoration", "ornamentation", "adorno", "adornos"]),
        (Before("back"), &["back", "espalda", "dorso"]),
        (Before("front"), &["front", "frente", "delantero"]),
        (Before("face"), &["face", "cara"]),
        (
            Except,
            &[
                "exclusive of",
                "exclusive",
                "excluding",
                "excl",
                "except",
                "except for",
                "excepto",
                "salvo",
                "excluyendo",
                "exclusivo de",
                "exclusiva de",
                "sin incluir",
                "sin contar",
            ],
        ),
        (
            Heather,
            &[
                "heather",
                "heathered",
                "heathers",
                "melange",
                "marl",
                "marled",
                "jaspeado",
                "jaspeada",
                "mezclado",
                "vigore",
            ],
        ),
        (
            Sublimation,
            &[
                "sublimation",
                "sublimated",
                "sublimation print",
                "sublimation printed",
                "dye sub",
                "dye sublimation",
                "sublimado",
                "sublimada",
                "sublimacion",
                "estampado por sublimacion",
                "all over print",
                "allover",
                "aop",
            ],
        ),
        (
            Dropped,
            &[
                "recycled",
                "reciclado",
                "reciclada",
                "organic",
                "organico",
                "organica",
                "ecologico",
                "ecologica",
                "ringspun",
                "ring spun",
                "combed",
                "peinado",
                "peinada",
                "carded",
                "cardado",
                "virgin",
                "virgen",
                "microfiber",
                "microfibre",
                "microfibra",
                "preshrunk",
                "pre shrunk",
                "preencogido",
                "certified",
                "certificado",
                "post consumer",
                "stretch",
                "elastico",
                "elastica",
                "open end",
                "compact",
                "bio",
            ],
        ),
        (
            Noise,
            &[
                "of",
                "and",
                "with",
                "the",
                "a",
                "an",
                "in",
                "from",
                "y",
                "e",
                "con",
                "de",
                "del",
                "la",
                "el",
                "los",
                "las",
                "en",
                "por",
                "per",
                "fabric",
                "fabrics",
                "tela",
                "telas",
                "tejido",
                "composition",
                "composicion",
                "content",
                "contents",
                "contenido",
                "material",
                "materials",
                "materiales",
                "knit",
                "knitted",
                "punto",
                "made",
                "hecho",
                "fibre",
                "fiber",
                "fibres",
                "fibers",
                "fibra",
                "fibras",
                "t",
                "shirt",
                "shirts",
                "tee",
                "tees",
                "tshirt",
                "polo",
                "camiseta",
                "camisetas",
                "playera",
                "playeras",
                "remera",
                "camisa",
                "garment",
                "prenda",
                "blend",
                "mezcla",
                "weight",
                "peso",
                "gramaje",
                "colour",
                "color",
                "printed",
                "print",
                "estampado",
                "estampada",
                "approx",
                "aprox",
                "mix",
                "soft",
                "cloth",
            ],
        ),
    ]
};

/// Most words in a phrase of [`WORDS`] or of a colour's name.
pub(super) const LONGEST_PHRASE: usize = 3;

/// The meaning of a folded word or phrase; fibre codes are read only in capitals.
pub(super) fn meaning(phrase: &str, capitals: bool) -> Option<Meaning> {
    WORDS
        .iter()
        .filter(|(meaning, _)| capitals || !matches!(meaning, Meaning::Code(_)))
        .find(|(_, words)| words.contains(&phrase))
        .map(|&(meaning, _)| meaning)
}

/// The fibre names that a misspelt word may have meant.
pub(super) fn fibre_words() -> impl Iterator<Item = &'static str> {
    WORDS
        .iter()
        .filter(|(meaning, _)| matches!(meaning, Meaning::Fibre(_)))
        .flat_map(|(_, words)| words.iter().copied())
        .filter(|word| !word.contains(' ') && word.len() > 3)
}
