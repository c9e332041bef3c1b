//! Rates of the demo shop: invented, plain numbers in no currency.

/// One rate: the shop field it fills, and what the demo shop puts there.
pub type DemoText = (&'static str, &'static str);

/// The demo shop's cartons, rates and price rule, as they would be typed.
pub static DEMO_RATES: [DemoText; 12] = [
    ("carton_mass_most", "12 kg"),
    ("carton_tare", "450 g"),
    ("carton_width", "305 mm"),
    ("carton_length", "430 mm"),
    ("carton_height", "220 mm"),
    ("rate_line_hour", "85"),
    ("rate_paper_kilo", "1.60"),
    ("rate_click", "0.035"),
    ("rate_wire_kilo", "6.50"),
    ("rate_carton", "0.95"),
    ("rate_job", "20"),
    ("price_valid", "14 days"),
];
