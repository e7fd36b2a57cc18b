//! What several screens are built of: fields, static views, disclosures, icons, and the writers of markup and SVG.

pub mod disclosure;
pub mod field;
pub mod icon;
pub mod map_picture;
pub mod markup;
pub mod static_view;
pub mod svg;
