//! The block's outline while it is being sized: plain geometry, its concrete's mass, and where the ground touches its sides.

use crate::brief::Brief;
use crate::field::Path;
use crate::figure::{Metre, Unit};
use crate::notes::{AssumedValue, Assumption, Notes};
use crate::path;
use crate::rules::en_1991_1_1_2002::concrete::density;
use crate::rules::pais_kausel_1988::{self as pais_kausel, Footing};
use crate::site_plan::excavation::Sides;
use crate::source::Source;
use crate::units::{
    Area, Force, Length, Mass, Volume, gravity, megapascal, metre, newton_metre_per_radian,
};

/// Side and depth of the block that the trade's rule of thumb names, m.
pub(super) const METRE_CUBE_M: f64 = 1.0;

/// Length, width, depth and upstand of a block.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Outline {
    pub(super) length: Length,
    pub(super) width: Length,
    pub(super) depth: Length,
    pub(super) upstand: Length,
}

impl Outline {
    pub(super) fn plan(&self) -> Area {
        self.length * self.width
    }

    pub(super) fn height(&self) -> Length {
        self.depth + self.upstand
    }

    pub(super) fn volume(&self) -> Volume {
        self.plan() * self.height()
    }

    pub(super) fn mass(&self) -> Mass {
        self.volume() * density()
    }

    pub(super) fn weight(&self) -> Force {
        self.mass() * gravity()
    }

    pub(super) fn shorter(&self) -> Length {
        if self.length < self.width {
            self.length
        } else {
            self.width
        }
    }

    pub(super) fn longer(&self) -> Length {
        if self.length < self.width {
            self.width
        } else {
            self.length
        }
    }

    /// Rocking stiffness the softer way over that of a metre cube in the same ground with the same share of its sides
    /// in contact; the ground's modulus falls out.
    pub(super) fn rocking_ratio(&self, contact_ratio: f64) -> f64 {
        let cube = Self {
            length: cube(),
            width: cube(),
            depth: cube(),
            upstand: metre::new(0.0),
        };
        self.rocking(contact_ratio) / cube.rocking(contact_ratio)
    }

    /// The depth counts up to the shorter side, where the closed form's range ends (D/B = 2).
    fn rocking(&self, contact_ratio: f64) -> f64 {
        let footing = Footing {
            shear_modulus: megapascal::new(1.0),
            poisson_ratio: 0.35,
            half_length: self.longer() / 2.0,
            half_width: self.shorter() / 2.0,
            depth: self.depth.min(self.shorter()) * contact_ratio,
        };
        let surface = newton_metre_per_radian::get(pais_kausel::surface_rocking_short(&footing));
        surface * pais_kausel::rocking_short_factor(&footing)
    }
}

fn cube() -> Length {
    metre::new(METRE_CUBE_M)
}

/// Depths between which the soil is hard against the sides.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Contact {
    pub(super) from: Length,
    pub(super) to: Length,
}

/// Share of the depth over which the sides are held: by the person's word, else all with straight-cut sides and none
/// with a battered pit that is filled up again.
pub(super) fn contact_ratio(brief: &Brief, depth: Length) -> f64 {
    let (from, to) = range(brief, depth);
    if depth > metre::new(0.0) {
        ((metre::get(to) - metre::get(from)) / metre::get(depth)).clamp(0.0, 1.0)
    } else {
        0.0
    }
}

fn range(brief: &Brief, depth: Length) -> (Length, Length) {
    let vertical = brief.excavation.sides.value == Sides::Vertical;
    let stated = brief.block.side_contact_from.is_some() || brief.block.side_contact_to.is_some();
    let to = within(brief.block.side_contact_to.unwrap_or(depth), depth);
    let open = if vertical || stated {
        within(topsoil(brief).unwrap_or(metre::new(0.0)), to)
    } else {
        depth
    };
    (
        within(brief.block.side_contact_from.unwrap_or(open), depth),
        to,
    )
}

fn within(value: Length, most: Length) -> Length {
    if value > most { most } else { value }
}

/// Topsoil that the person named; it does not hold the sides.
fn topsoil(brief: &Brief) -> Option<Length> {
    brief
        .site
        .stated
        .topsoil_depth_m
        .filter(|depth| *depth > 0.0)
        .map(metre::new)
}

/// The contact that the later stages take, written down as an assumption where it was not stated.
pub(super) fn contact(brief: &Brief, outline: &Outline, notes: &mut Notes) -> Contact {
    let (from, to) = range(brief, outline.depth);
    let said = &brief.block;
    if said.side_contact_from.is_none()
        && (said.side_contact_to.is_none() || topsoil(brief).is_some())
    {
        notes.assumptions.push(assumed(brief, from));
    }
    let below = |stated: Option<Length>| stated.is_some_and(|stated| stated > outline.depth);
    if below(said.side_contact_to) {
        let says = ("reach", "it ends there");
        let field = path!(block.side_contact_to_m);
        notes.assumptions.push(below_base(brief, field, to, says));
    }
    if below(said.side_contact_from) {
        let says = ("begin", "no soil touches the sides");
        let field = path!(block.side_contact_from_m);
        notes.assumptions.push(below_base(brief, field, from, says));
    }
    Contact { from, to }
}

/// A contact that was stated to reach or to begin below the base which the sizing found, and what comes of it.
fn below_base(brief: &Brief, field: Path, base: Length, says: (&str, &str)) -> Assumption {
    let (does, so) = says;
    Assumption {
        field,
        value: AssumedValue::Number(metre::get(base)),
        unit: Unit::Metre,
        why: format!(
            "The contact was stated to {does} deeper than the base that the sizing found, {} below ground; {so}.",
            brief.units.say(base, Metre)
        ),
        effect: "stiffness of the block in the ground".into(),
        source: Source::judgement("no side below the base"),
    }
}

fn assumed(brief: &Brief, from: Length) -> Assumption {
    let vertical =
        brief.excavation.sides.value == Sides::Vertical || brief.block.side_contact_to.is_some();
    let why = if vertical && topsoil(brief).is_some() {
        "Side contact is assumed only below the topsoil, which is loose and rooted and does not hold the sides."
    } else if vertical {
        "The sides are cut straight and the concrete is poured against undisturbed ground, so the ground may hold them from the \
         surface to the base; how much of that is counted on is said with the ground's stiffness."
    } else {
        "The pit is sloped and filled again round the shuttering. Backfill does not hold a block as undisturbed ground does, \
         so no side contact is counted."
    };
    let effect = if vertical {
        "Contact makes the block several times stiffer in rocking; loose fill, a foam lining or a gap left by shuttering \
         takes it away."
    } else {
        "Every tilt is several times larger than with the ground hard against the sides. Fill well rammed in thin layers, or lean \
         concrete, may be stated as contact between two depths."
    };
    Assumption {
        field: path!(block.side_contact_from_m),
        value: AssumedValue::Number(metre::get(from)),
        unit: Unit::Metre,
        why: why.into(),
        effect: effect.into(),
        source: Source::judgement("undisturbed ground holds the sides, backfill does not"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site_plan::SitePlan;

    fn held(change: impl Fn(&mut SitePlan)) -> [f64; 2] {
        let mut plan = SitePlan::unknown();
        plan.excavation.sides = Some(Sides::Vertical);
        change(&mut plan);
        let brief = crate::brief::resolve(&plan).unwrap();
        let (from, to) = range(&brief, metre::new(1.0));
        [metre::get(from), metre::get(to)]
    }

    #[test]
    fn named_topsoil_holds_no_sides_unless_the_person_says_so() {
        assert_eq!(held(|_| ()), [0.0, 1.0]);
        assert_eq!(
            held(|plan| plan.site.topsoil_depth_m = Some(0.25)),
            [0.25, 1.0]
        );
        assert_eq!(
            held(|plan| {
                plan.site.topsoil_depth_m = Some(0.25);
                plan.block.side_contact_from_m = Some(0.0);
            }),
            [0.0, 1.0]
        );
        assert_eq!(
            held(|plan| plan.site.topsoil_depth_m = Some(1.5)),
            [1.0, 1.0]
        );
    }

    #[test]
    fn topsoil_deeper_than_a_stated_end_leaves_no_contact() {
        let [from, to] = held(|plan| {
            plan.site.topsoil_depth_m = Some(0.3);
            plan.block.side_contact_to_m = Some(0.2);
        });
        assert_eq!([from, to], [0.2, 0.2]);
    }
}
