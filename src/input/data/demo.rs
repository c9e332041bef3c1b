//! The demo shop's papers: invented names and figures, no mill makes them.

/// A paper of the demo shop: its name, and the text that describes it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DemoStock {
    /// The shop's name for it.
    pub name: &'static str,
    /// What the shop knows of it, as a person would type it.
    pub paper: &'static str,
}

/// Papers on the demo shop's shelf.
pub static DEMO_STOCKS: [DemoStock; 8] = [
    DemoStock { name: "Marmalade Offset 90", paper: "90 gsm uncoated 0.112 mm" },
    DemoStock { name: "Marmalade Offset 120", paper: "120 gsm uncoated 0.150 mm" },
    DemoStock { name: "Pond Silk 115", paper: "115 gsm silk 0.095 mm" },
    DemoStock { name: "Pond Silk 130", paper: "130 gsm silk 0.108 mm" },
    DemoStock { name: "Pond Silk 170", paper: "170 gsm silk 0.142 mm" },
    DemoStock { name: "Pond Silk Cover 250", paper: "250 gsm silk cover 0.238 mm" },
    DemoStock { name: "Lantern Gloss 100 lb text", paper: "100 lb gloss text 0.0048 in" },
    DemoStock { name: "Lantern Gloss 80 lb cover", paper: "80 lb gloss cover 0.0076 in" },
];
