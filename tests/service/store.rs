//! The tests of the store, the same ones on either database.

/// Runs them on the database of a place, each file once for each database.
macro_rules! tests_on {
    ($database:ident) => {
        use stillground_tests::place::Place;
        use stillground_tests::service::{Service, start_in};

        #[path = "store/access.rs"]
        mod access;
        #[path = "store/archive.rs"]
        mod archive;
        #[path = "store/damage.rs"]
        mod damage;
        #[path = "store/house.rs"]
        mod house;
        #[path = "store/links.rs"]
        mod links;
        #[path = "store/organiser.rs"]
        mod organiser;
        #[path = "store/plans.rs"]
        mod plans;
        #[path = "store/record.rs"]
        mod record;
        #[path = "store/releases.rs"]
        mod releases;

        fn place() -> Place {
            Place::$database()
        }

        fn start() -> Service {
            start_in(place())
        }
    };
}

pub(crate) use tests_on;
