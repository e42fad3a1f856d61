//! Each caution in one line: the danger, and what is worn or done. The whole text is the caution's own.

use stillground::notes::Caution;

/// By the caution's name, at most sixteen words each. Figures stand in the whole text alone.
const LINES: &[(&str, &str)] = &[
    (
        "anchors.bars",
        "Drill hits reinforcement: keep bars clear of the template; never drill through.",
    ),
    (
        "anchors.contact",
        "Stainless on zinc corrodes when wet: isolate with washers and sleeves.",
    ),
    (
        "anchors.corrosion",
        "Plain or thinly zinc-plated studs rust outdoors: use galvanised or stainless.",
    ),
    (
        "anchors.galling",
        "Stainless threads seize: use anti-seize paste and turn slowly.",
    ),
    (
        "anchors.galvanised",
        "Galvanised studs need oversize-tapped nuts, oiled; never recut the stud.",
    ),
    (
        "anchors.high_strength",
        "Class 10.9 studs can crack when damp: use 8.8.",
    ),
    (
        "anchors.hold_lower_nut",
        "Turning nut can break the bond: hold the lower nut with a spanner.",
    ),
    (
        "anchors.pattern",
        "Ring of studs is outside EN 1992-4’s patterns: engineer to agree.",
    ),
    (
        "anchors.product",
        "No resin approval given: enter its data before anyone drills.",
    ),
    (
        "anchors.ribs",
        "Stiffeners are not counted; a thick plate needs none.",
    ),
    (
        "anchors.torque_unit",
        "Maximum torque unknown: find it on the resin’s sheet before tightening.",
    ),
    (
        "anchors.wet_hole",
        "Resin may fail in wet holes: check its sheet; double the curing time.",
    ),
    (
        "block.cold_pour",
        "Frost ruins fresh concrete: no frozen ground; cover and insulate it.",
    ),
    (
        "block.does_not_work",
        "The block fails a check: change the plan before you dig.",
    ),
    (
        "block.dowels",
        "Bars set into rock: dust mask, goggles, and resin only in a clean hole.",
    ),
    (
        "block.drill_not_before",
        "Green concrete lets studs go: wait out both waits of the schedule.",
    ),
    (
        "block.ducts_and_drill",
        "Drilling can hit a cable: draw cables in after drilling.",
    ),
    (
        "block.frost_and_concrete",
        "Frost may scale this concrete’s top: ask for an air-entrained one.",
    ),
    (
        "block.frost_remedy",
        "Frost grips the sides: build in the plan’s remedy before winter.",
    ),
    (
        "block.heat",
        "Block cracks if its face cools: insulate three days, no cold water.",
    ),
    (
        "block.hot_pour",
        "Heat sets concrete fast: pour early, wet the sides, cover at once.",
    ),
    (
        "block.pour_in_one_go",
        "Pour in one go: mixing this much by hand leaves a cold joint.",
    ),
    (
        "block.site_mix_strength",
        "Site mix rarely reaches this strength: order it delivered or use a weaker class.",
    ),
    (
        "bond.resin",
        "Resin causes allergy and eye burns: nitrile gloves, goggles, fresh air.",
    ),
    (
        "bond.wait",
        "A stud moved while resin cures does not hold: wait the full time.",
    ),
    (
        "column.welding",
        "Structural weld: qualified welder, fume extraction on zinc, vent holes before galvanising.",
    ),
    (
        "dig.back",
        "Heavy spoil: lift with your legs, half-fill the barrow, change over every quarter-hour.",
    ),
    (
        "dig.machine",
        "Digger: stay outside its swing, in the driver’s sight; nobody rides on it.",
    ),
    (
        "dig.open_pit",
        "Open pit: fence it, cover it when unattended, keep a way out.",
    ),
    (
        "dig.services",
        "Buried cables and pipes: get plans, scan, hand-dig with an insulated spade.",
    ),
    (
        "drill.machine",
        "Rotary hammer kicks when it jams: side handle, both hands, goggles, ear defenders.",
    ),
    (
        "drill.silica",
        "Silica dust scars lungs: extractor and close-fitting FFP3 or P100 mask.",
    ),
    (
        "excavation.backfill",
        "Loose fill does not hold the block: ram thin layers after a week.",
    ),
    (
        "excavation.bottom",
        "Leave the last hand’s breadth to a long-handled spade, used from the edge.",
    ),
    (
        "excavation.building",
        "Pit near a building: dig only after a structural engineer has looked.",
    ),
    (
        "excavation.collapse",
        "Pit sides collapse: never stand in an unsupported pit; trim from above.",
    ),
    (
        "excavation.deep_by_hand",
        "Too deep for hand digging from the edge: shore, slope or hire a digger.",
    ),
    (
        "excavation.inspect",
        "Weather weakens a pit: have it checked daily and after rain or frost.",
    ),
    (
        "excavation.lining",
        "Upright side of loose soil: line and strut it as you dig.",
    ),
    (
        "excavation.rock",
        "Breaking rock: goggles, ear defenders, P3 or N100 mask; wet it; no explosives.",
    ),
    (
        "excavation.spoil",
        "Weight pushes the pit side in: keep spoil and vehicles well back.",
    ),
    (
        "excavation.water",
        "Water in the pit: nobody enters until it is pumped out and watched.",
    ),
    (
        "excavation.way_out",
        "Deep pit: a tied ladder close by, and someone above who can see you.",
    ),
    (
        "floor.deck",
        "Deck timber and posts: size by local code; never fix to the pier.",
    ),
    (
        "floor.off_floor",
        "Places off the floor are assumed to press on bare ground.",
    ),
    (
        "floor.over_block",
        "Standing over the block tilts the pier most: stand outside it.",
    ),
    (
        "floor.slab",
        "Cast the slab clear of the block; remove every board from the gap.",
    ),
    (
        "floor.walk_over_block",
        "Route crosses the block: lead it round the block, at the distance to keep.",
    ),
    (
        "ground.ask_an_engineer",
        "Do not build on this ground until a ground engineer has advised.",
    ),
    (
        "ground.blow_count",
        "Blow count not used: it says little about this ground’s stiffness.",
    ),
    (
        "ground.drain",
        "Drain or service near: trace it, dig by hand, test an old drain.",
    ),
    (
        "ground.frost",
        "Frozen soil can lift the block: keep the ground beside it drained.",
    ),
    (
        "ground.frost_disagrees",
        "Stated frost depth is less than the freezing index gives: check it.",
    ),
    (
        "ground.slope",
        "Slope may slide: ask an engineer if steep; pile spoil downhill.",
    ),
    (
        "ground.speed_disagrees",
        "Stated shear-wave speed is unusual for this soil: check what was measured.",
    ),
    (
        "ground.strength_set_aside",
        "Stated strength of the ground was not used: have it checked.",
    ),
    (
        "ground.topsoil",
        "Strip the topsoil; it does not hold the block’s sides.",
    ),
    (
        "ground.tree",
        "Tree near: do not cut thick roots; ask about clay that shrinks.",
    ),
    (
        "ground.water",
        "High groundwater weakens and lifts: the plan allows for it.",
    ),
    (
        "lift.column",
        "A falling column crushes: hoist, nobody beneath, nuts on before letting go.",
    ),
    (
        "lift.fill",
        "A full column is too heavy to lift: fill it standing; wear the mask.",
    ),
    (
        "lift.height",
        "Work at height: use a platform with a rail, not a leaning ladder.",
    ),
    (
        "measure.knock",
        "A fall hurts: knock with the hand, from the ground; two lift the mount.",
    ),
    (
        "measure.lean",
        "Somebody walks in the dark: mark the way and clear it of cables.",
    ),
    (
        "measure.level",
        "A plate can settle on fingers: keep out of the gap under it.",
    ),
    (
        "measure.pull",
        "Strap or clutch can slip: pull slowly, and stand clear of the telescope.",
    ),
    (
        "mend.undermine",
        "Digging takes away the block’s hold: one side at a time, never below its base.",
    ),
    (
        "mend.unload",
        "A loaded column can fall: take telescope and mount off first.",
    ),
    (
        "motion.season",
        "Ground shifts with the seasons: check polar alignment after winter.",
    ),
    (
        "north.sun",
        "Looking at the sun blinds: use its shadow, and cover every telescope.",
    ),
    (
        "observe.climbing",
        "Do not climb the pier or tie ropes or swings to it.",
    ),
    (
        "observe.dark",
        "Trips and swinging telescope in the dark: route cables, keep the swing clear.",
    ),
    (
        "observe.wet",
        "After flooding, check settlement and polar alignment before you trust the pier.",
    ),
    (
        "pier.lifting",
        "The column is too heavy by hand: hoist it, hands and feet clear.",
    ),
    (
        "plan.alone",
        "Never work alone; tell someone where you are and carry a telephone.",
    ),
    (
        "plan.codes",
        "This plan is no permit: ask the building office and follow local codes.",
    ),
    (
        "plan.ground_first",
        "Unfit ground: order and dig nothing until a ground engineer has judged it.",
    ),
    (
        "pour.bags",
        "Cement dust and heavy bags: mask, two people, hands out of the drum.",
    ),
    (
        "pour.cement",
        "Wet concrete burns skin and eyes: waterproof gloves, boots, goggles; rinse at once.",
    ),
    (
        "pour.lorry",
        "Concrete lorry: keep it farther from the pit than the pit is deep.",
    ),
    (
        "tighten.grout",
        "Grout burns: gloves and goggles; full torque only when it is hard.",
    ),
    (
        "tighten.unit",
        "Over-tightened studs fly out: check unit and limit, keep your face clear.",
    ),
    (
        "wire.licensed",
        "Outdoor mains kills: a licensed electrician connects and tests it.",
    ),
    (
        "wire.lightning",
        "Lightning: stay away in a thunderstorm, unplug; ask an electrician about bonding.",
    ),
];

/// The line of a caution; its first sentence where the list has none.
#[must_use]
pub fn line(caution: &Caution) -> &str {
    LINES
        .iter()
        .find(|(id, _)| *id == caution.id)
        .map_or_else(|| first_sentence(&caution.text), |(_, line)| line)
}

fn first_sentence(text: &str) -> &str {
    text.split_inclusive(". ").next().unwrap_or(text).trim_end()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::planned::Planned;
    use stillground::halfspace::NoShelf;
    use stillground::site_plan::SitePlan;

    #[test]
    fn every_caution_of_every_example_has_its_line_and_none_is_long() {
        assert!(LINES.iter().all(|(_, line)| line.split(' ').count() <= 16));
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../tests/examples");
        let mut plans = 0;
        for file in std::fs::read_dir(folder).unwrap() {
            let text = std::fs::read_to_string(file.unwrap().path()).unwrap();
            let plan: SitePlan = serde_json::from_str(&text).unwrap();
            let planned = Planned::of(&plan, &NoShelf)
                .map_err(|problems| problems.to_string())
                .unwrap();
            for caution in &planned.design.cautions {
                let words = line(caution).split(' ').count();
                assert!(
                    words <= 16,
                    "{}: begin it with a short sentence or add a line",
                    caution.id
                );
            }
            plans += 1;
        }
        assert_eq!(plans, 6);
    }

    #[test]
    fn a_caution_without_a_line_says_its_first_sentence() {
        assert_eq!(
            first_sentence("Mind the step. It is high."),
            "Mind the step."
        );
        assert_eq!(first_sentence("Mind the step."), "Mind the step.");
    }
}
