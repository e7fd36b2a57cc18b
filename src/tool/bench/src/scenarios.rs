//! The scenarios that are timed and checked: stacks and dryers far apart from each other.

use whitehold::dryer::{
    Board, Case, Cooling, DriftCase, Dryer, Emitter, Film, HeatTransfer, NearInfrared, Stack, TOLERANCE,
    Zone, history,
};
use whitehold::ink::CureKinetics;
use whitehold::library::{Library, cure_kinetics, starter};
use whitehold::quantity::Share;
use whitehold::quantity::units::kelvin;
use whitehold::textile::{Construction, Fabric, Fibre};

/// What stops a bench; it is printed and the program ends.
pub type Failure = Box<dyn std::error::Error>;

/// A stack that goes through a dryer, and the ink on it.
#[derive(Clone, Debug)]
pub struct Scenario {
    /// Its name in the table.
    pub name: String,
    /// What lies on the belt.
    pub stack: Stack,
    /// The dryer.
    pub dryer: Dryer,
    /// Set temperature, belt speed and drift of the dryer.
    pub case: Case,
    /// The kinetics of its ink.
    pub ink: CureKinetics,
}

impl Scenario {
    /// Eight belt speeds as far apart as those of a cure window, the scenario's own in the middle.
    #[must_use]
    pub fn at_eight_speeds(&self) -> [Case; 8] {
        std::array::from_fn(|lane| {
            let belt = self.case.belt * SPEED_STEP.powf(lane as f64 - 3.5);
            Case { belt, ..self.case }
        })
    }
}

/// Ratio of neighbouring belt speeds in a window of 16 columns from 10 to 150 s.
const SPEED_STEP: f64 = 1.197_864_9;

/// Makes scenarios from the library that ships.
struct ScenarioBuilder {
    library: Library,
    dryer: Dryer,
}

impl ScenarioBuilder {
    fn new() -> Result<Self, Failure> {
        let library = starter()?;
        let record = library.dryer("long-kiln").map_err(|error| format!("{error:?}"))?;
        let dryer = Dryer::from_record(record).map_err(|errors| format!("{errors:?}"))?;
        Ok(Self { library, dryer })
    }

    fn cloth(&self, id: &str) -> Result<Fabric, Failure> {
        let record = self.library.fabric_record(id).map_err(|error| format!("{error:?}"))?;
        Ok(self.library.fabric_of(record).map_err(|error| format!("{error:?}"))?)
    }

    fn ink(&self, id: &str) -> Result<CureKinetics, Failure> {
        Ok(cure_kinetics(self.library.kinetics_record(id).map_err(|error| format!("{error:?}"))?))
    }

    fn zone(&self) -> Result<Zone, Failure> {
        Ok(self.dryer.zones.first().cloned().ok_or("the dryer has no zone")?)
    }
}

fn film(micrometres: f64) -> Film {
    Film { thickness: micrometres * 1e-6, density: Film::DENSITY }
}

/// Name, cloth, film µm, humidity, water beyond regain, garment or flat, dryer, set °C, dwell s, ink.
type Row = (&'static str, &'static str, f64, f64, f64, bool, usize, f64, f64, &'static str);

/// The scenarios that are timed. Their settings are near the point where the ink has just fused, where an error in fusion
/// shows most.
///
/// # Errors
/// [`Failure`] if the library cannot be read.
pub fn timed() -> Result<Vec<Scenario>, Failure> {
    let builder = ScenarioBuilder::new()?;
    let base = &builder.dryer;
    let zone = builder.zone()?;
    let air_only = Zone {
        panel_offset: None,
        h_top: HeatTransfer::measured(60.0),
        h_bottom: HeatTransfer::measured(40.0),
        ..zone.clone()
    };
    let thirds = |offset: f64| Zone { length: zone.length / 3.0, air_offset: offset, ..zone.clone() };
    let dryers = [
        base.clone(),
        Dryer { zones: vec![air_only], ..base.clone() },
        Dryer { zones: vec![thirds(-20.0), thirds(0.0), thirds(10.0)], ..base.clone() },
    ];
    let rows: [Row; 14] = [
        ("cotton jersey", "cotton-jersey", 100.0, 0.65, 0.0, true, 0, 175.0, 37.0, "ordinary"),
        ("50/50 jersey", "blend-50-50-jersey", 100.0, 0.65, 0.0, true, 0, 175.0, 31.0, "ordinary"),
        ("tri-blend jersey", "tri-blend-jersey", 80.0, 0.50, 0.0, true, 0, 170.0, 35.0, "ordinary"),
        ("polyester jersey", "polyester-jersey", 100.0, 0.65, 0.0, true, 0, 175.0, 25.0, "ordinary"),
        ("polyester, low-cure", "polyester-interlock", 80.0, 0.50, 0.0, true, 0, 150.0, 28.0, "low-cure"),
        ("nylon shell, low-cure", "nylon-shell", 60.0, 0.65, 0.0, true, 0, 150.0, 25.0, "low-cure"),
        ("80/20 fleece", "blend-80-20-fleece", 150.0, 0.65, 0.0, true, 0, 175.0, 55.0, "ordinary"),
        ("polyester fleece", "polyester-fleece", 120.0, 0.65, 0.0, true, 0, 165.0, 45.0, "ordinary"),
        ("damp cotton", "cotton-jersey", 100.0, 0.90, 0.0, true, 0, 175.0, 46.0, "ordinary"),
        ("wet cotton", "cotton-jersey", 100.0, 0.65, 0.2, true, 0, 175.0, 63.0, "ordinary"),
        ("thin film, flat", "polyester-tricot", 25.0, 0.65, 0.0, false, 0, 165.0, 20.0, "ordinary"),
        ("thick film", "cotton-jersey-heavy", 300.0, 0.65, 0.0, true, 0, 180.0, 52.0, "ordinary"),
        ("hot air alone", "cotton-jersey", 100.0, 0.65, 0.0, true, 1, 175.0, 45.0, "ordinary"),
        ("three zones", "cotton-jersey-mid", 110.0, 0.65, 0.0, true, 2, 175.0, 42.0, "ordinary"),
    ];
    let scenario = |row: Row| {
        let (name, cloth, micrometres, humidity, added_water, garment, dryer, set, dwell, ink) = row;
        let mut stack = Stack::garment(film(micrometres), &builder.cloth(cloth)?, Share(humidity));
        stack.added_water = added_water;
        if !garment {
            stack.back = None;
        }
        let dryer = dryers[dryer].clone();
        let case = Case { set: kelvin(set), belt: dryer.heated_length() / dwell, drift: DriftCase::NOMINAL };
        Ok(Scenario { name: name.into(), stack, dryer, case, ink: builder.ink(ink)? })
    };
    rows.into_iter().map(scenario).collect()
}

/// Random scenarios, the same at every call: whatever a shop could put on its belt, in any dryer that gels it and does not
/// burn it.
///
/// # Errors
/// [`Failure`] if the library cannot be read.
pub fn random(count: usize) -> Result<Vec<Scenario>, Failure> {
    let builder = ScenarioBuilder::new()?;
    let mut random = Random(1);
    let mut scenarios = Vec::with_capacity(count);
    while scenarios.len() < count {
        let cloth = |random: &mut Random| {
            let [first, second] = [random.one_of(&Fibre::ALL), random.one_of(&Fibre::ALL)];
            let mut composition = std::collections::BTreeMap::from([(first, random.between(0.0, 1.0))]);
            *composition.entry(second).or_insert(0.0) += 1.0 - composition[&first];
            let weight = random.between(80.0, 400.0);
            builder.library.fabric(&composition, random.one_of(&Construction::ALL), weight)
        };
        let front = cloth(&mut random).map_err(|error| format!("{error:?}"))?;
        let lining = cloth(&mut random).map_err(|error| format!("{error:?}"))?;
        let film = Film {
            thickness: random.between(20e-6_f64.ln(), 400e-6_f64.ln()).exp(),
            density: random.between(1200.0, 1450.0),
        };
        let mut stack = Stack::garment(film, &front, Share(random.between(0.1, 0.95)));
        match random.between(0.0, 1.0) {
            share if share < 0.2 => stack.back = None,
            share if share < 0.4 => stack.back = Some(lining),
            share if share < 0.5 => (stack.back, stack.board) = (None, Some(Board::USUAL)),
            _ => {}
        }
        // A quarter is wet, from damp to dripping.
        if random.between(0.0, 1.0) < 0.25 {
            stack.added_water = random.between(0.05, 1.0);
        }
        if random.between(0.0, 1.0) < 0.25 {
            stack.blocker = Some(Film { thickness: random.between(30e-6, 150e-6), ..film });
        }
        stack.gap_conductance = random.between(20.0, 60.0);
        // A quarter of the dryers heat by lamps, which see the cloth's colour.
        let lamps = random.between(0.0, 1.0) < 0.25;
        stack.near_infrared = NearInfrared::on_cloth(random.between(20.0, 95.0));
        let zones = (0..1 + (random.between(0.0, 3.0) as usize)).map(|_| Zone {
            length: random.between(0.5, 2.0),
            air_offset: random.between(-20.0, 20.0),
            h_top: HeatTransfer::measured(random.between(15.0, 80.0)),
            h_bottom: HeatTransfer::measured(random.between(8.0, 50.0)),
            panel_offset: (random.between(0.0, 1.0) < 0.7)
                .then(|| if lamps { random.between(1500.0, 2200.0) } else { random.between(120.0, 300.0) }),
            exchange: if lamps { random.between(0.005, 0.02) } else { random.between(0.05, 0.3) },
            emitter: if lamps { Emitter::NearInfrared } else { Emitter::MidInfrared },
        });
        let mut dryer = Dryer { zones: zones.collect(), ..builder.dryer.clone() };
        dryer.belt.heat_capacity = random.between(300.0, 1500.0);
        dryer.belt.contact = random.between(20.0, 80.0);
        dryer.belt.entry_temperature = kelvin(random.between(30.0, 100.0));
        dryer.cooling = random.one_of(&[Cooling::Open, Cooling::Fan, Cooling::Stacked]);
        dryer.humidity_ratio = random.between(0.005, 0.03);
        let low_cure = random.between(0.0, 1.0) < 0.4;
        let ink = builder.ink(if low_cure { "low-cure" } else { "ordinary" })?;
        let set = kelvin(if low_cure { random.between(130.0, 165.0) } else { random.between(155.0, 190.0) });
        let case = Case {
            set,
            belt: dryer.heated_length() / random.between(20.0, 90.0),
            drift: DriftCase {
                stop: if random.between(0.0, 1.0) < 0.1 { 15.0 } else { 0.0 },
                ..DriftCase::NOMINAL
            },
        };
        let wet = if stack.added_water > 0.0 { ", wet" } else { "" };
        let name = format!("random {}{wet}", scenarios.len() + 1);
        let scenario = Scenario { name, stack, dryer, case, ink };
        // A film that stays raw on dry cloth, or one that burns, is no print: its temperature does not matter. Under a
        // film on wet cloth the water must be right.
        let lowest = kelvin(if scenario.stack.added_water > 0.0 { 60.0 } else { 110.0 });
        let peak =
            history(&scenario.stack, &scenario.dryer, &[scenario.case], 1, TOLERANCE)?.film_bottom_peak()[0];
        if (lowest..kelvin(230.0)).contains(&peak) {
            scenarios.push(scenario);
        }
    }
    Ok(scenarios)
}

/// Random numbers by SplitMix64 (Steele, Lea & Flood 2014): the same on every machine.
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        all[(self.next() % all.len() as u64) as usize]
    }
}
