//! When the disk does not do what it should: an honest answer, nothing half saved, and a way back.

use stillground_server::config::Settings;
use stillground_tests::service::{start_with, titled, unknown};

#[test]
fn nothing_is_acknowledged_into_a_store_that_was_taken_away() {
    let folder = tempfile::tempdir().unwrap();
    let settings = || Settings {
        data: Some(folder.path().to_owned()),
        ..Settings::default()
    };
    let service = start_with(settings());
    let kept = service.create(&unknown());
    let (store, aside) = (
        folder.path().join("stillground.sqlite"),
        folder.path().join("aside.sqlite"),
    );
    std::fs::rename(&store, &aside).unwrap();
    let refused = service.replace(&kept, 1, &titled("lost"));
    assert_eq!(
        (refused.status, refused.json()["code"].as_str().unwrap()),
        (503, "store")
    );
    assert_eq!(service.post_json("/api/v1/plans", &unknown()).status, 503);
    assert_eq!(service.get("/health/ready").status, 503);
    std::fs::rename(&aside, &store).unwrap();
    assert_eq!(service.replace(&kept, 1, &titled("found")).status, 200);
    drop(service);
    let again = start_with(settings());
    assert_eq!(again.read(&kept, &kept.edit, "").json()["title"], "found");
}

#[test]
fn a_text_that_would_break_a_print_is_refused_with_its_path() {
    let service = start_with(Settings {
        data: Some(tempfile::tempdir().unwrap().path().join("data")),
        ..Settings::default()
    });
    for letter in [
        "\u{202e}", "\u{2066}", "\u{2028}", "\u{fffe}", "\u{fffd}", "\u{0}", "\u{85}",
    ] {
        let refused = service.post_json("/api/v1/design", &titled(&format!("pier{letter}")));
        assert_eq!(
            (
                refused.status,
                refused.json()["errors"][0]["path"].as_str().unwrap()
            ),
            (422, "title"),
            "{letter:?}"
        );
    }
    assert_eq!(
        service
            .post_json(
                "/api/v1/design",
                &titled("\u{627}\u{644}\u{200f} \u{1f52d}\u{200d}\u{10ffff}")
            )
            .status,
        200
    );
}
