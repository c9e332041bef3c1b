//! Which way the fibres run, seen from the spine. Asked for, never guessed from typed dimensions.

/// The fibre direction of a stock in the book.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Grain {
    /// Nobody has said.
    #[default]
    Unknown,
    /// Parallel to the spine: folds well, lies flat.
    AlongSpine,
    /// Across the spine: cracks, waves and gapes.
    AcrossSpine,
}
