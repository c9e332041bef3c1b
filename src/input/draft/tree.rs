//! The shape of any file: null, truth, number, text, list, map in its own order.

use crate::units::digits;
use serde::de::{MapAccess, SeqAccess, Visitor};
use serde::ser::{SerializeMap, SerializeSeq};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Up to here every whole number is exact in a double.
const WHOLE: f64 = 9_007_199_254_740_992.0;

/// A value of a file before anyone has looked at what it means.
#[derive(Debug, Clone, PartialEq)]
pub enum Tree {
    /// Nothing.
    Null,
    /// Yes or no.
    Bool(bool),
    /// A number; whole numbers too.
    Number(f64),
    /// Text.
    Text(String),
    /// Values in order.
    List(Vec<Tree>),
    /// Values by name, in the order of the file.
    Map(Vec<(String, Tree)>),
}

impl Tree {
    /// A text value.
    #[must_use]
    pub fn text(text: impl Into<String>) -> Self {
        Self::Text(text.into())
    }
    /// The value as a person would have typed it; nothing for lists, maps and null.
    #[must_use]
    pub fn typed(&self) -> Option<String> {
        match self {
            Self::Text(text) => Some(text.clone()),
            Self::Number(number) => Some(digits(*number)),
            Self::Bool(yes) => Some(if *yes { "yes" } else { "no" }.to_owned()),
            Self::Null | Self::List(_) | Self::Map(_) => None,
        }
    }
}

impl<'de> Deserialize<'de> for Tree {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(TreeVisitor)
    }
}

/// Takes whatever the file holds.
struct TreeVisitor;

impl<'de> Visitor<'de> for TreeVisitor {
    type Value = Tree;

    fn expecting(&self, out: &mut core::fmt::Formatter) -> core::fmt::Result {
        out.write_str("any value")
    }
    fn visit_bool<E>(self, yes: bool) -> Result<Tree, E> {
        Ok(Tree::Bool(yes))
    }
    fn visit_i64<E>(self, number: i64) -> Result<Tree, E> {
        Ok(Tree::Number(number as f64))
    }
    fn visit_u64<E>(self, number: u64) -> Result<Tree, E> {
        Ok(Tree::Number(number as f64))
    }
    fn visit_f64<E>(self, number: f64) -> Result<Tree, E> {
        Ok(Tree::Number(number))
    }
    fn visit_str<E>(self, text: &str) -> Result<Tree, E> {
        Ok(Tree::text(text))
    }
    fn visit_unit<E>(self) -> Result<Tree, E> {
        Ok(Tree::Null)
    }
    fn visit_none<E>(self) -> Result<Tree, E> {
        Ok(Tree::Null)
    }
    fn visit_some<D: Deserializer<'de>>(self, inner: D) -> Result<Tree, D::Error> {
        Tree::deserialize(inner)
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Tree, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element()? {
            list.push(item);
        }
        Ok(Tree::List(list))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Tree, A::Error> {
        let mut map = Vec::new();
        while let Some(entry) = entries.next_entry()? {
            map.push(entry);
        }
        Ok(Tree::Map(map))
    }
}

impl Serialize for Tree {
    fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Null => out.serialize_unit(),
            Self::Bool(yes) => out.serialize_bool(*yes),
            // Whole numbers print alike natively and in the page.
            Self::Number(number) if number.fract() == 0.0 && number.abs() < WHOLE => {
                out.serialize_i64(*number as i64)
            }
            Self::Number(number) => out.serialize_f64(*number),
            Self::Text(text) => out.serialize_str(text),
            Self::List(items) => {
                let mut list = out.serialize_seq(Some(items.len()))?;
                for item in items {
                    list.serialize_element(item)?;
                }
                list.end()
            }
            Self::Map(entries) => {
                let mut map = out.serialize_map(Some(entries.len()))?;
                for (name, value) in entries {
                    map.serialize_entry(name, value)?;
                }
                map.end()
            }
        }
    }
}
