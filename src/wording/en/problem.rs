//! Problems of a field and of the browser's store, and what to do.

use crate::library::storage_layout::Trouble;
use crate::quantity::Problem;
use crate::wording::{Quantity, Voice};

pub(in crate::wording) fn problem(problem: &Problem, value: &str, voice: Voice) -> String {
    match problem {
        Problem::NotANumber => format!("“{value}” is not a number. Write digits, with a comma or a point."),
        Problem::OutOfRange { min, max, unit } => format!(
            "{value} is out of range. From {} to {} can be used.",
            voice.bare(Quantity::Plain, *min),
            // A count has no unit: no space after the number then.
            format!("{} {unit}", voice.bare(Quantity::Plain, *max)).trim_end()
        ),
        Problem::Empty => "Nothing here yet. Write it as it stands on the garment.".into(),
        Problem::Unknown { nearest, accepted } => {
            let way_out = if !nearest.is_empty() {
                format!("Did you mean {}?", nearest.join(", "))
            } else if !accepted.is_empty() {
                format!("Known: {}.", accepted.join(", "))
            } else {
                "Write it another way.".into()
            };
            format!("“{value}” is not known. {way_out}")
        }
        Problem::SumNot100 { sum, section } if section.is_empty() => {
            format!("The shares make {}. A label makes 100.", voice.bare(Quantity::Plain, *sum))
        }
        Problem::SumNot100 { sum, section } => {
            format!("The shares of {section} make {}. A label makes 100.", voice.bare(Quantity::Plain, *sum))
        }
        Problem::TooLong { max } => format!("Too long. {max} letters fit."),
        Problem::Contradiction { with } => format!("“{value}” and {with} cannot both be true. Change one."),
        Problem::NotUnderstood => {
            format!("“{value}” could not be read. Write a share and a fibre, like 60% cotton 40% polyester.")
        }
        Problem::NotSolved => "The heat in the dryer could not be computed for this. Change the setting, the film or the weight of the cloth.".into(),
    }
}

/// What is wrong with the browser's store, and what to do.
pub(in crate::wording) fn trouble(trouble: &Trouble) -> String {
    use Trouble as T;
    match trouble {
        T::Full => "The disk is full, or the browser gives this page no more of it. What you change now is not kept: free some space, or save it as a file.".into(),
        T::Refused => "This browser keeps nothing for this page. A private window does that, or a rule of the shop: save your work as a file before you close it.".into(),
        T::Wiped => "The browser has deleted what was kept here. Open the file you saved last; from now on it keeps again.".into(),
        T::Blocked => "Another tab holds the store with an older version of this page. Close that tab, and this one goes on.".into(),
        T::Newer => "A newer version of this page was used here. This one reads what is kept and changes nothing: open the newer one, or save your work as a file.".into(),
        T::Closed => "The store was closed under this page. Save your work as a file, then load the page again.".into(),
        T::NotOurs => "That file holds no order. Nothing was changed: open a file that was saved here.".into(),
        T::Failed(said) => format!("The browser could not save. It says “{said}”: save your work as a file."),
    }
}
