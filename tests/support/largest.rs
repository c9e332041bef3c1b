//! The longest job that is planned: as many pages, sections, copies and letters as may be typed.

use quirefit::draft::MOST_MEMBERS;

/// Its file.
pub fn largest() -> String {
    let long = "W".repeat(120);
    let section = |index: usize| {
        format!(r#"{{ "pages": "400", "paper": "{} gsm silk", "place": "around" }}"#, 60 + index)
    };
    let sections: Vec<String> = (0..MOST_MEMBERS).map(section).collect();
    format!(
        r#"{{ "format": "quirefit-job", "version": 1, "title": "{long}", "customer": "{long}",
            "date": "{long}", "by": "{long}", "pages": "2000 + 4", "size": "A4",
            "paper": "90 gsm uncoated", "cover": "300 gsm silk", "copies": "5,000,000",
            "images": "nobody", "sections": [{}] }}"#,
        sections.join(", ")
    )
}
