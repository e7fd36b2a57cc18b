//! How a colour looks and how far two colours lie apart.
