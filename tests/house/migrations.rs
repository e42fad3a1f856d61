//! Steps of the schema: both databases take the same ones.

use crate::files;

#[test]
fn both_databases_take_the_same_steps_and_all_of_them_are_applied() {
    let names = |database: &str| {
        let folder = format!("server/migrations/{database}");
        files(&folder, &[".sql"])
            .into_iter()
            .map(|(path, _)| path.replace(&folder, ""))
            .collect::<Vec<_>>()
    };
    let (sqlite, postgres) = (names("sqlite"), names("postgres"));
    assert_eq!(sqlite, postgres);
    let code = files("server/src/store", &[".rs"])
        .into_iter()
        .find(|(path, _)| path.ends_with("schema.rs"))
        .unwrap()
        .1;
    for (number, name) in sqlite.iter().enumerate() {
        let name = name.trim_start_matches('/').trim_end_matches(".sql");
        assert!(
            name.starts_with(&format!("{:04}_", number + 1)),
            "{name} is step {}",
            number + 1
        );
        assert!(
            code.contains(&format!("step!(\"{name}\")")),
            "{name} is applied by nobody"
        );
    }
}
