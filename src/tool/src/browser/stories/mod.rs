//! What a person does with the page, one story after another.
//!
//! In: the [`Fixture`]. Out: which stories passed. A story must not know selectors, nor how the page is drawn: it acts and
//! reads through the page objects of [`screens`](crate::browser::screens).
//!
//! A story is an async function; add it to [`STORIES`]. Its name is the sentence that is printed. Each begins with a browser
//! that was never used before.

mod access;
mod bad_input;
mod cure_window;
mod files;
mod forecast;
mod garments;
mod given_up;
mod lost_stores;
mod nothing_leaves;
mod nothing_lost;
mod opening;
mod other_browsers;
mod print_rooms;
mod records;
mod refusing;
mod sheets;
mod ten_orders;
mod trials;
mod two_tabs;
mod working_days;

use crate::browser::fixture::Fixture;
use crate::host::progress::{say, seconds};
use crate::host::workspace::Workspace;
use anyhow::{Result, bail};
use std::cell::RefCell;
use std::pin::Pin;
use std::time::{Duration, Instant};

type Run<'a> = Pin<Box<dyn Future<Output = Result<()>> + 'a>>;

struct Story {
    name: &'static str,
    run: for<'a> fn(&'a Fixture) -> Run<'a>,
}

/// Turns `opening::the_file_opens` into a story of that name.
macro_rules! stories {
    ($($file:ident :: $name:ident,)*) => {
        [$(Story { name: concat!(stringify!($file), "::", stringify!($name)), run: |fixture| Box::pin($file::$name(fixture)) },)*]
    };
}

static STORIES: [Story; 57] = stories![
    opening::the_file_opens_from_a_stick,
    opening::the_page_opens_over_http,
    opening::a_page_of_ones_own_can_hold_the_desk,
    opening::an_open_page_asks_for_nothing,
    opening::the_page_looks_as_approved,
    other_browsers::the_desk_works_in_firefox,
    other_browsers::the_desk_works_in_webkit,
    nothing_leaves::the_probe_reaches_a_listener_when_no_policy_forbids_it,
    nothing_leaves::nothing_reaches_a_listener_under_the_policy_of_the_page,
    nothing_lost::a_killed_browser_loses_nothing_that_was_acknowledged,
    nothing_lost::two_tabs_lose_nothing_to_each_other,
    nothing_lost::a_duplicated_tab_keeps_a_draft_of_its_own,
    lost_stores::a_full_disk_is_said_and_the_work_goes_out_as_a_file,
    lost_stores::a_wiped_store_is_noticed_and_a_file_brings_the_work_back,
    lost_stores::a_browser_that_keeps_nothing_says_so_and_hands_out_a_file,
    lost_stores::what_a_later_version_kept_is_read_and_left_alone,
    lost_stores::a_draft_of_an_earlier_version_is_taken_over_once,
    lost_stores::a_store_that_opens_late_supersedes_nothing,
    records::a_white_is_written_changed_and_brought_back,
    records::the_cloth_of_an_order_is_kept_and_found,
    records::two_tablets_are_merged_and_nothing_is_lost,
    records::a_table_with_a_bad_row_is_held_back,
    two_tabs::two_tabs_write_by_turns,
    two_tabs::a_thousand_edits_of_two_tabs_are_all_there,
    records::a_file_on_the_disk_is_kept_up_to_date,
    records::an_order_is_kept_and_printed_again,
    records::a_tap_outlives_a_redraw,
    refusing::a_browser_without_wasm_is_told_so,
    refusing::a_browser_without_constructed_sheets_is_told_so,
    refusing::a_damaged_copy_is_told_so,
    refusing::a_page_without_scripts_is_told_so,
    refusing::a_failure_while_working_is_told_so,
    ten_orders::each_answer_is_one_a_press_lead_would_accept,
    ten_orders::a_bad_label_keeps_the_last_answer_and_says_what_is_wrong,
    garments::a_second_garment_brings_a_plan_for_all,
    garments::a_flat_piece_is_entered_and_stands_on_its_sheet,
    garments::a_meter_file_colours_the_garment,
    given_up::a_tapped_way_says_what_it_is_and_can_be_used,
    cure_window::a_closed_window_shows_its_map_and_what_opens_it,
    cure_window::a_dragged_set_point_says_where_it_fails,
    forecast::a_forecast_opens_by_its_address_and_follows_the_heat,
    forecast::a_cloth_without_dye_has_no_forecast,
    sheets::the_owner_prints_the_sheets_on_one_page_each,
    sheets::a_sheet_is_read_back_from_a_picture,
    print_rooms::a_new_shop_sets_up_and_plans_its_first_order,
    print_rooms::a_white_that_turned_is_traced_to_the_heat,
    print_rooms::the_settings_hold_on_every_screen,
    trials::an_unknown_fabric_goes_to_trial_and_comes_back,
    working_days::a_red_polyester_rush_job_goes_to_the_press_with_its_care,
    working_days::a_spanish_speaking_operator_works_the_day,
    bad_input::every_field_takes_whatever_is_written,
    bad_input::every_form_of_the_library_takes_whatever_is_written,
    access::axe_finds_nothing_in_light_colours,
    access::axe_finds_nothing_in_dark_colours,
    access::every_screen_takes_a_finger_and_twice_the_size,
    access::every_screen_is_used_by_keyboard_alone,
    access::every_screen_is_calm_and_takes_the_readers_colours,
];

/// How long one story may take; one that is asked to go on for longer says so by its number of kills.
const PATIENCE: Duration = Duration::from_secs(300);

/// Runs the stories whose name holds `filter`, two at a time, and sums them up the way cargo's tests do.
///
/// Two, because a story waits half of its time for the page; a third would find no core on the machines that run the checks.
///
/// # Errors
/// [`anyhow::Error`] if the page is not built, or a story failed.
pub async fn run(workspace: &Workspace, filter: Option<&str>) -> Result<()> {
    let fixture = Fixture::set_up(workspace).await?;
    let start = Instant::now();
    let waiting =
        RefCell::new(STORIES.iter().filter(|story| filter.is_none_or(|word| story.name.contains(word))));
    let (mut outcome, others) =
        tokio::try_join!(run_in_turn(&fixture, &waiting), run_in_turn(&fixture, &waiting))?;
    outcome.passed += others.passed;
    outcome.told.extend(others.told);
    let Outcome { passed, told } = outcome;
    for failure in &told {
        say(&format!("\n{failure}"));
    }
    let word = if told.is_empty() { "ok" } else { "FAILED" };
    let took = seconds(start.elapsed());
    say(&format!("\ntest result: {word}. {passed} passed; {} failed; finished in {took}", told.len()));
    if told.is_empty() { Ok(()) } else { bail!("{} stories failed", told.len()) }
}

/// How the stories of one turn ended.
#[derive(Default)]
struct Outcome {
    passed: usize,
    /// A failed story's name and error.
    told: Vec<String>,
}

/// Runs one waiting story after another until none waits.
async fn run_in_turn(
    fixture: &Fixture,
    waiting: &RefCell<impl Iterator<Item = &'static Story>>,
) -> Result<Outcome> {
    let patience = PATIENCE * nothing_lost::kills()?.div_ceil(nothing_lost::KILLS).max(1);
    let mut outcome = Outcome::default();
    loop {
        let Some(story) = waiting.borrow_mut().next() else { return Ok(outcome) };
        let result = tokio::time::timeout(patience, (story.run)(fixture)).await;
        match result.unwrap_or_else(|_| bail!("it did not come to an end within {}", seconds(patience))) {
            Ok(()) => {
                say(&format!("test {} ... ok", story.name));
                outcome.passed += 1;
            }
            Err(error) => {
                say(&format!("test {} ... FAILED", story.name));
                outcome.told.push(format!("---- {} ----\n{error:#}", story.name));
            }
        }
    }
}
