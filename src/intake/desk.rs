//! Where files that came in are kept open: read for their facts, written anew to an order.

use super::file::open;
use super::write::Writer;
use super::{Facts, Order, Part, Unreadable};
use hayro_syntax::Pdf;

/// Both parts of a delivery, as far as they have come.
#[derive(Default)]
pub struct Desk {
    /// The last file, until it has its place.
    arrived: Option<Pdf>,
    files: [Option<Pdf>; 2],
    writer: Option<Writer>,
}

impl Desk {
    /// Opens a file. `password` is empty where none is known.
    ///
    /// # Errors
    /// Why nothing can be said about it.
    pub fn arrive(&mut self, bytes: Vec<u8>, password: &str) -> Result<Facts, Unreadable> {
        self.arrived = None;
        let (pdf, facts) = open(bytes, password)?;
        self.arrived = Some(pdf);
        Ok(facts)
    }

    /// Gives the file that has arrived its place; what was there is closed. Where none has, it is closed
    /// all the same.
    pub fn place(&mut self, part: Part) {
        self.writer = None;
        let arrived = self.arrived.take();
        if let Some(place) = self.files.get_mut(part as usize) {
            *place = arrived;
        }
    }

    /// What came as the inside was the cover, and the other way round.
    pub fn swap(&mut self) {
        self.writer = None;
        self.files.reverse();
    }

    /// Begins to write.
    pub fn begin(&mut self, order: Order) {
        self.writer = Some(Writer::new(order));
    }

    /// Writes the next page. Gives back how many are written of how many.
    pub fn go_on(&mut self) -> (usize, usize) {
        self.writer.as_mut().map_or((0, 0), |writer| writer.go_on(&self.files))
    }

    /// Nothing more is written.
    pub fn stop(&mut self) {
        self.writer = None;
    }

    /// The file that was written, as far as it was; nothing where none was begun.
    pub fn written(&mut self) -> Vec<u8> {
        self.writer.take().map(|writer| writer.finish(&self.files)).unwrap_or_default()
    }
}
