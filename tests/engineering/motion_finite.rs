//! No figure that is not finite comes out of any valid plan: plans drawn at random over every number's whole range.

use stillground::brief::resolve;
use stillground::decided::design_plan;
use stillground::design::design;
use stillground::halfspace::NoShelf;
use stillground::site_plan::pier::{Fill, Levelling};
use stillground::site_plan::site::Soil;
use stillground::site_plan::{SitePlan, Use};

/// A repeatable sequence of numbers from nought to one.
struct Draw(u64);

impl Draw {
    fn next(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    fn of<T: Copy>(&mut self, all: &[T]) -> T {
        all[((self.next() * all.len() as f64) as usize).min(all.len() - 1)]
    }
}

/// A plan with about a third of its numbers given, ends of their ranges among them.
fn plan(draw: &mut Draw) -> SitePlan {
    let mut plan = SitePlan::unknown();
    for field in SitePlan::numbers() {
        let (asked, place) = (draw.next(), draw.next());
        if asked < 0.3 {
            // Most ranges span decades: draw evenly in the root.
            let place = if asked < 0.03 {
                place.round()
            } else {
                place * place
            };
            (field.set)(
                &mut plan,
                Some(field.least + (field.most - field.least) * place),
            );
        }
    }
    plan.site.soil = Some(draw.of(Soil::ALL));
    plan.purpose = Some(draw.of(Use::ALL));
    plan.pier.fill = Some(draw.of(Fill::ALL));
    plan.pier.levelling = Some(draw.of(Levelling::ALL));
    plan
}

fn finite(what: &str, seed: u64) {
    for word in [
        ": NaN", "[NaN", ": inf", "[inf", ": -inf", "[-inf", "(NaN", "(inf", ", NaN", ", inf",
    ] {
        assert!(!what.contains(word), "{word} in the design of seed {seed}");
    }
}

#[test]
fn random_plans_have_finite_motion() {
    let mut tried = 0;
    for seed in 0..400 {
        let plan = plan(&mut Draw(seed * 7919 + 17));
        let Ok(brief) = resolve(&plan) else { continue };
        let found = design(&brief, &NoShelf);
        finite(
            &format!("{:?} {:?} {:?}", found.motion, found.pier, found.checks),
            seed,
        );
        tried += 1;
        if tried == 40 {
            return;
        }
    }
    assert!(
        tried >= 10,
        "only {tried} plans without contradictions were drawn"
    );
}

#[test]
fn improvements_of_random_plans_are_finite() {
    let mut tried = 0;
    for seed in 1000..1200 {
        let plan = plan(&mut Draw(seed * 7919 + 17));
        let Ok(found) = design_plan(&plan, &NoShelf) else {
            continue;
        };
        finite(&format!("{:?}", found.improvements), seed);
        tried += 1;
        if tried == 4 {
            return;
        }
    }
}
