use super::*;
use stillground::brief::resolve;
use stillground::design::design;
use stillground::halfspace::NoShelf;
use stillground::site_plan::SitePlan;

fn checked(change: impl FnOnce(&mut SitePlan)) -> Checking {
    let mut plan = SitePlan::unknown();
    change(&mut plan);
    let brief = resolve(&plan).unwrap();
    checking(&brief, &design(&brief, &NoShelf)).unwrap()
}

#[test]
fn every_row_fills_its_columns_and_both_codes_have_every_way_of_failing() {
    for checking in [
        checked(|_| ()),
        checked(|plan| plan.pier.levelling = Some(stillground::site_plan::pier::Levelling::Grout)),
    ] {
        assert!(checking.listings.len() > 5, "{}", checking.listings.len());
        for listing in checking.listings.iter().chain([&checking.summary]) {
            assert!(!listing.rows.is_empty());
            for row in &listing.rows {
                assert_eq!(row.len(), listing.heads.len(), "{}", listing.title);
                assert!(
                    row.iter()
                        .all(|cell| !cell.is_empty() && !cell.contains("not known")),
                    "{}: {row:?}",
                    listing.title
                );
            }
        }
        for name in ["EN 1992-4", "ACI 318-19"] {
            let modes = checking
                .listings
                .iter()
                .find(|listing| listing.title == format!("Every way of failing by {name}"))
                .unwrap();
            // Pull and shear together: two rules by EN 1992-4, one by ACI 318.
            assert_eq!(
                modes.rows.len(),
                Mode::ALL.len() + if name.starts_with("EN") { 2 } else { 1 }
            );
            assert_eq!(
                modes
                    .rows
                    .iter()
                    .filter(|row| row[0].ends_with("fails first"))
                    .count(),
                1,
                "{name}"
            );
            let factors = checking
                .listings
                .iter()
                .find(|listing| listing.title == format!("Every factor by {name}"))
                .unwrap();
            assert!(
                factors
                    .rows
                    .iter()
                    .all(|row| row[4].contains("EN 1992-4") || row[4].contains("ACI 318")),
                "{name}"
            );
        }
    }
}

#[test]
fn a_reader_in_imperial_units_meets_no_metric_one() {
    let checking = checked(|plan| plan.units = Some(Units::Imperial));
    for cell in checking
        .listings
        .iter()
        .flat_map(|listing| listing.rows.iter().flatten())
    {
        let cell = cell.replace('\u{a0}', " ");
        for unit in [" kN", " N m", " mm,", " MPa", " mm²"] {
            assert!(
                !cell.ends_with(unit.trim_end_matches(',')) && !cell.contains(&format!("{unit},")),
                "{cell}"
            );
        }
    }
}
