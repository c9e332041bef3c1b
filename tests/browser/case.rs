//! A case: what is tried, and in which browsers.

use crate::engine::{Engine, Scheme};
use crate::page::Page;
use std::error::Error;
use std::future::Future;
use std::pin::Pin;

/// Nothing, or why it did not work.
pub type Outcome<T = ()> = Result<T, Box<dyn Error>>;

type Running<'a> = Pin<Box<dyn Future<Output = Outcome> + 'a>>;

/// One thing that must hold on the page.
pub struct Case {
    /// `file::function`.
    pub name: &'static str,
    pub engines: &'static [Engine],
    pub scheme: Scheme,
    pub run: for<'a> fn(&'a Page<'a>) -> Running<'a>,
}

/// Makes a list of cases out of `name` for every engine, `name in ENGINES` for some, and either
/// followed by `, dark` to run with the dark colours.
#[macro_export]
macro_rules! cases {
    ($file:literal: $($name:ident $(in $engines:expr)? $(=> $scheme:ident)?;)*) => {
        /// This file's cases.
        pub const CASES: &[$crate::case::Case] = &[$(
            $crate::case::Case {
                name: concat!($file, "::", stringify!($name)),
                engines: $crate::cases!(@engines $($engines)?),
                scheme: $crate::cases!(@scheme $($scheme)?),
                run: |page| Box::pin($name(page)),
            }
        ),*];
    };
    (@engines) => { &$crate::engine::Engine::ALL };
    (@engines $engines:expr) => { $engines };
    (@scheme) => { $crate::engine::Scheme::Light };
    (@scheme $scheme:ident) => { $crate::engine::Scheme::$scheme };
}
