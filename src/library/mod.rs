//! The starter library.
