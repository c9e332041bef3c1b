//! Numbers as text between the two modules, through a script that only hands them on.

use base64ct::{Base64, Encoding};
use serde::Serialize;
use serde::de::DeserializeOwned;

/// A value as text.
#[must_use]
pub fn pass<T: Serialize>(value: &T) -> String {
    // Nothing here can fail to be written: no floats are refused, no map lacks its length.
    postcard::to_allocvec(value).map(|bytes| Base64::encode_string(&bytes)).unwrap_or_default()
}

/// The value of a text; nothing where it is not one of these.
#[must_use]
pub fn taken<T: DeserializeOwned>(text: &str) -> Option<T> {
    postcard::from_bytes(&Base64::decode_vec(text).ok()?).ok()
}
