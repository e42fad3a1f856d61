//! Drawings on narrow screens: nothing is cut or moves sideways, and no letter is too small to read.

use serde_json::Value;
use stillground_tests::service::unknown;

use crate::walk::Journey;

/// What is wrong with the drawings in sight: parts off the screen, letters below twelve pixels. Gives how many there are.
/// A telephone lays its scroll bar over the page, where a desk's takes fifteen pixels.
const LOOK: &str = "
    document.documentElement.style.scrollbarWidth = 'none';
    document.querySelectorAll('details').forEach(fold => { fold.open = true; });
    const faults = [];
    const shown = [...document.querySelectorAll('svg.drawing')].filter(svg => svg.checkVisibility());
    for (const svg of shown) {
        const name = svg.querySelector('title').textContent;
        const box = svg.getBoundingClientRect();
        if (box.left < 0 || box.right > innerWidth + 0.5) faults.push(`${name}: from ${box.left} to ${box.right}`);
        for (let e = svg.parentElement; e && e !== document.body; e = e.parentElement)
            if (e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).overflowX !== 'visible')
                faults.push(`${name}: moves sideways`);
        const paper = svg.getScreenCTM().a;
        const inner = svg.getBBox();
        const view = svg.viewBox.baseVal;
        if (inner.x < -0.5 || inner.y < -0.5 || inner.x + inner.width > view.width + 0.5 || inner.y + inner.height > view.height + 0.5)
            faults.push(`${name}: drawn beyond its frame`);
        for (const text of svg.querySelectorAll('text')) {
            const size = parseFloat(text.getAttribute('font-size')) * paper;
            if (size < 12) faults.push(`${name}: ‘${text.textContent}’ is ${size.toFixed(1)} pixels high`);
        }
    }
    return [shown.length, faults];";

/// Pages of the example with the fewest drawings that each must show.
const PAGES: [(&str, usize); 12] = [
    ("/", 1),
    ("/example/plan/drawings", 8),
    ("/example/plan/stillness", 4),
    ("/example/site", 1),
    ("/example/footing", 1),
    ("/example/anchors", 1),
    ("/example/floor", 1),
    ("/example/measure/knock", 1),
    ("/example/measure/lean", 1),
    ("/example/measure/pull", 1),
    ("/example/measure/walk", 1),
    ("/example/measure/level", 1),
];

#[test]
fn on_a_telephone_each_drawing_fits_and_can_be_read() {
    let journey = Journey::new(390);
    let kept = journey.service.create(&unknown());
    let record = format!("/p/{}/record#inspect", kept.record);
    let drill = format!("/p/{}/record#drill", kept.record);
    let short = format!("/p/{}/short/ground", kept.edit);
    let pages = PAGES
        .iter()
        .map(|&(path, least)| (path.to_owned(), least))
        .chain([(record, 1), (drill, 1), (short, 1)]);
    for (path, least) in pages {
        for width in [390, 320] {
            journey.browser.size(width, 844);
            journey.open(&path);
            let found = journey.browser.run(LOOK);
            let count = found[0].as_u64().unwrap() as usize;
            assert!(count >= least, "{path} at {width}: {count} drawings");
            let faults: Vec<&str> = found[1]
                .as_array()
                .unwrap()
                .iter()
                .filter_map(Value::as_str)
                .collect();
            assert!(
                faults.is_empty(),
                "{path} at {width}:\n{}",
                faults.join("\n")
            );
        }
    }
}

/// Paper has the sheet's layout, however narrow the screen is, and one layout alone is in sight.
#[test]
fn paper_has_the_drawing_of_the_sheet() {
    let journey = Journey::new(390);
    journey.open("/example/plan/drawings");
    let shown = "return [...document.querySelectorAll('.fitted')].map(e => [...e.children].filter(c => c.checkVisibility()).map(c => c.className).join()).filter(Boolean).filter((c, i, all) => all.indexOf(c) === i)";
    assert_eq!(journey.browser.run(shown), serde_json::json!(["as-phone"]));
    journey.browser.media("light", "print");
    assert_eq!(journey.browser.run(shown), serde_json::json!(["as-sheet"]));
}
