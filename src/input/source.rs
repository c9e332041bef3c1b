//! Where a figure comes from, carried beside the figure.

/// The origin of a value, best first when values compete.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// Measured on this job's own paper, dummy or book.
    Measured,
    /// Given by the mill or merchant for this stock.
    Mill,
    /// The shop's own figure.
    Shop,
    /// Typed with the job.
    Job,
    /// A published standard, handbook or table.
    Published {
        /// Title and clause.
        title: &'static str,
        /// Year of that edition; 0 when it carries none.
        year: u16,
    },
    /// Follows from geometry or exact definitions.
    Derived,
    /// Common practice of the trade, no source.
    Practice,
    /// From memory, unverified.
    Memory,
    /// Invented for a generic example.
    Invented,
}

/// A value and where it comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// Its origin.
    pub source: Source,
}

impl<T> Sourced<T> {
    /// Puts an origin beside a value.
    pub const fn new(value: T, source: Source) -> Self {
        Self { value, source }
    }
}
