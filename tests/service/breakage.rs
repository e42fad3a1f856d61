//! What breaks while people save, each a few times; `tests/faults` breaks everything, and often.

use stillground_tests::faults;
use stillground_tests::place::Place;

#[test]
fn an_acknowledged_save_outlives_a_kill() {
    faults::kills(&Place::on_sqlite(), 4).must_hold();
    faults::kills(&Place::on_postgres(), 4).must_hold();
}

#[test]
fn a_full_disk_is_said_to_be_full_and_room_again_is_enough() {
    faults::full_disk().must_hold();
}

#[test]
fn a_write_that_fails_is_not_acknowledged() {
    faults::limited_file().must_hold();
}

#[test]
fn a_disk_that_answers_with_errors_is_believed_and_used_again_when_it_works() {
    faults::failing_calls().must_hold();
}

#[test]
fn a_slow_disk_keeps_those_who_save_waiting_and_nobody_else() {
    faults::slow_calls().must_hold();
}

#[test]
fn a_database_that_goes_and_comes_back_is_found_again_without_a_restart() {
    faults::database_restarts(2).must_hold();
}

#[test]
fn when_one_of_two_instances_dies_the_other_has_everything() {
    faults::instance_killed(1).must_hold();
}

#[test]
fn two_people_at_two_instances_never_overwrite_each_other() {
    faults::two_writers(&Place::on_postgres(), 20).must_hold();
    faults::two_writers(&Place::on_sqlite(), 20).must_hold();
}
