//! What is typed, stepped or chosen on the page becomes the order and the setting that are asked about, in any units and
//! either language.

use super::answered_desk::{Used, order, pick};
use whitehold::desk::{Choice, Draft, Field, Msg, Screen, key};
use whitehold::plan::{DialSetting, DyeClass, Priority, Verdict};
use whitehold::textile::Fibre;
use whitehold::wording::{Language, Units, Voice};

#[test]
fn the_form_describes_the_order_it_was_opened_with() {
    let used = Used::new();
    assert_eq!(used.last(), &order());
    assert_eq!(used.state.pick().map(|pick| pick.white.as_str()), Some("gannet"));
    assert!(used.state.spoken.starts_with("Trial first. GANNET"), "{}", used.state.spoken);
}

#[test]
fn what_is_typed_reaches_the_order() {
    let mut used = Used::new();
    used.type_in(Field::Pieces, "1,200").type_in(Field::Area, "812,5").type_in(Field::Label, " 100% cotton ");
    used.send(Msg::Choose(Choice::Priority(Priority::Fast)));
    used.send(Msg::Choose(Choice::Dyed(Some(true))))
        .send(Msg::Choose(Choice::DyeClass(DyeClass::HighEnergy)));
    let order = used.last();
    assert_eq!(order.garments[0].pieces, 1200);
    assert_eq!(order.garments[0].label, "100% cotton");
    assert_eq!(order.garments[0].dyed_fibres, Some(vec![Fibre::Polyester]));
    assert!((order.print.area_cm2 - 812.5).abs() < 1e-9);
    assert_eq!(order.print.priority, Priority::Fast);
    used.send(Msg::Choose(Choice::Dyed(Some(false))));
    assert_eq!(used.last().garments[0].dyed_fibres, Some(Vec::new()), "answered no, not left open");
}

#[test]
fn units_convert_and_come_back_without_loss() {
    let mut used = Used::new();
    used.type_in(Field::FixedSetTemperature, "165").send(Msg::Units);
    let shown = [
        (Field::Weight, "4.4"),
        (Field::FixedSetTemperature, "329"),
        (Field::Area, "139.5"),
        (Field::Pieces, "144"),
    ];
    for (field, text) in shown {
        assert_eq!(used.text(field), text);
    }
    let mut same = order();
    same.shop.dryer_fixed = Some(165.0);
    assert_eq!(used.last(), &same, "the order does not change with its units");
    used.send(Msg::Units);
    assert_eq!((used.text(Field::Weight), used.text(Field::Area)), ("150", "900"));
    used.send(Msg::Units).type_in(Field::Weight, "5.3");
    let weight = used.last().garments[0].areal_weight_gsm.expect("a weight");
    assert!((weight - 179.7).abs() < 0.05, "typed in oz/yd²: {weight}");
}

#[test]
fn spanish_writes_a_comma_and_reads_both() {
    let mut used = Used::new();
    used.type_in(Field::Area, "812.5").send(Msg::Language);
    assert_eq!(used.text(Field::Area), "812,5");
    used.type_in(Field::Area, "640.5");
    assert!((used.last().print.area_cm2 - 640.5).abs() < 1e-9);
    assert_eq!(used.state.voice().language, Language::Es);
}

/// What is worked out before anybody opens an order is what opening it asks about, to the last number.
#[test]
fn an_order_is_known_before_it_is_opened() {
    for units in [false, true] {
        for room_order in whitehold::library::harbour_lane().unwrap().orders {
            let mut used = Used::new();
            if units {
                used.send(Msg::Units);
            }
            let ahead = used.state.would_ask(&room_order.order, "any");
            used.send(Msg::Open(Box::new(room_order.order), "any".into()));
            assert_eq!(ahead.as_ref(), used.state.order.as_ref(), "{}", room_order.id);
            assert!(ahead.is_some(), "{} can be read", room_order.id);
        }
    }
}

#[test]
fn steppers_step_on_round_values_and_stop_at_the_ends() {
    let mut used = Used::new();
    used.send(Msg::Step(Field::Pieces, 1));
    assert_eq!(used.text(Field::Pieces), "150");
    used.send(Msg::Step(Field::Pieces, -1));
    assert_eq!(used.text(Field::Pieces), "140");
    used.type_in(Field::Coverage, "98").send(Msg::Step(Field::Coverage, 1));
    assert_eq!(used.text(Field::Coverage), "100");
    used.send(Msg::Step(Field::Coverage, 1));
    assert_eq!(used.text(Field::Coverage), "100");
}

#[test]
fn the_set_point_moves_on_steps_and_stays_on_the_map() {
    let mut used = Used::new();
    used.send(Msg::Show(Screen::Window));
    assert_eq!(used.windows, [None], "the best point first");
    used.send(Msg::Step(Field::SetTemperature, 1));
    assert_eq!(used.windows.last(), Some(&Some(DialSetting { set_c: 166.0, belt_m_per_min: 2.8 })));
    used.send(Msg::Point(DialSetting { set_c: 166.4, belt_m_per_min: 2.83 }));
    assert_eq!(used.text(Field::SetTemperature), "166");
    assert_eq!(used.text(Field::Belt), "2.85");
    used.send(Msg::Point(DialSetting { set_c: 400.0, belt_m_per_min: 0.0 }));
    assert_eq!(
        used.state.point(),
        Ok(Some(DialSetting { set_c: 190.0, belt_m_per_min: 1.5 })),
        "held to the map"
    );
    used.type_in(Field::SetTemperature, "330");
    assert_eq!(used.state.window_errors.len(), 1, "330 °C is not on the map");
    assert!(used.state.window.is_some(), "the window stays");
    used.type_in(Field::Belt, "fast");
    for field in [Field::SetTemperature, Field::Belt] {
        assert_eq!(used.state.errors_of(field).count(), 1, "{field:?} is marked, whatever the other says");
    }
    used.send(Msg::BestPoint);
    assert_eq!(used.windows.last(), Some(&None));
}

#[test]
fn another_way_is_chosen_by_what_it_is() {
    let mut used = Used::new();
    let tern = key(&pick("tern", Verdict::Refuse));
    used.send(Msg::Use(tern.clone()));
    assert_eq!(used.state.pick().map(key), Some(tern));
    used.type_in(Field::Pieces, "20");
    assert_eq!(
        used.state.pick().map(|pick| pick.white.as_str()),
        Some("tern"),
        "the choice outlives a change"
    );
}

#[test]
fn several_garments_keep_their_own_fields() {
    let mut used = Used::new();
    used.send(Msg::AddGarment).type_in(Field::Label, "100% cotton");
    used.send(Msg::Garment(0)).type_in(Field::Pieces, "10");
    let labels: Vec<_> = used.last().garments.iter().map(|it| (it.label.as_str(), it.pieces)).collect();
    assert_eq!(labels, [("100% polyester interlock, 150 g/m2, red", 10), ("100% cotton", 144)]);
    used.send(Msg::RemoveGarment);
    assert_eq!(used.last().garments.len(), 1);
}

#[test]
fn fields_the_form_does_not_show_are_not_lost() {
    let mut full = order();
    full.print.locations = vec!["front".into(), "sleeve".into()];
    full.use_.customer_bans = vec!["pvc".into()];
    full.garments[0].stretch_percent = 30.0;
    full.other = serde_json::from_str(r#"{ "from_a_newer_tablet": [1, 2] }"#).expect("JSON");
    let read = Draft::of(&full, "", Voice { language: Language::Es, units: Units::Us }).read();
    assert_eq!(read, Ok(full));
}
