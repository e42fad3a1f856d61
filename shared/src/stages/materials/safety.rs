//! What keeps people whole.

use super::{Group, Job, List, pieces};

pub(super) fn list(job: &Job) -> List {
    let mut list = List::of(Group::Safety);
    let people = job.people();
    list.buy(
        "gloves-cement",
        "Gloves, waterproof and alkali-proof",
        pieces(people),
        "wet concrete",
        "pairs; wet cement burns without pain at first",
    );
    list.buy(
        "gloves-nitrile",
        "Gloves, nitrile",
        pieces(4.0 * people),
        "resin",
        "pairs; resin makes some people allergic for life; change them when soiled",
    );
    list.buy(
        "goggles",
        "Goggles, close fitting",
        pieces(people),
        "concrete, drilling, blowing out holes",
        "",
    );
    list.buy(
        "masks",
        "Dust masks, FFP3 or P100",
        pieces(2.0 * people),
        "drilling concrete, cement dust",
        "clean shaven, or they leak",
    );
    list.buy(
        "ear-defenders",
        "Ear defenders",
        pieces(people),
        "hammer drill, breaker",
        "",
    );
    list.have(
        "boots",
        "Rubber boots and steel-toed boots",
        pieces(people),
        "pouring; lifting",
        "pairs",
    );
    list.have(
        "helmets",
        "Helmet",
        pieces(people),
        "lifting the column, work in the pit",
        "",
    );
    list.have(
        "first-aid",
        "First-aid kit with eye wash, and a telephone that works there",
        pieces(1.0),
        "the worst moment",
        "",
    );
    list.buy(
        "locator",
        "Service locator",
        pieces(1.0),
        "finding cables and pipes before digging",
        "with instruction, after the owners' plans have been asked for",
    );
    list
}
