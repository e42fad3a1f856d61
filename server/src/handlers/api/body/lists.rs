//! Where the lists of a document stand: a glance that spares nearly every plan the search for answers without names.

use std::collections::BTreeSet;
use std::fmt;
use std::sync::LazyLock;

use serde::Deserializer;
use serde::de::{DeserializeSeed, MapAccess, SeqAccess, Visitor};

/// A plan in which every list has something in it.
const EXAMPLE: &[u8] = include_bytes!("../../../../../tests/examples/quarry-lane.json");

/// Places at which a plan has lists.
static KNOWN: LazyLock<BTreeSet<String>> = LazyLock::new(|| {
    let mut found = BTreeSet::new();
    read(EXAMPLE, &mut |path| {
        found.insert(path.to_owned());
    });
    found
});

/// Whether a document that was read as a plan has lists only where plans have them.
pub(super) fn are_all_known(document: &[u8]) -> bool {
    let mut all = true;
    read(document, &mut |path| all &= KNOWN.contains(path)) && all
}

/// Tells of each list's place: names with a dot before each, `[]` for whatever stands in a list.
fn read(document: &[u8], found: &mut dyn FnMut(&str)) -> bool {
    let mut reader = serde_json::Deserializer::from_slice(document);
    Glance {
        path: &mut String::new(),
        found,
    }
    .deserialize(&mut reader)
    .is_ok()
}

struct Glance<'g> {
    path: &'g mut String,
    found: &'g mut dyn FnMut(&str),
}

impl Glance<'_> {
    /// The same, one step further down.
    fn below(&mut self) -> Glance<'_> {
        Glance {
            path: self.path,
            found: self.found,
        }
    }
}

impl<'de> DeserializeSeed<'de> for Glance<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, reader: D) -> Result<(), D::Error> {
        reader.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Glance<'_> {
    type Value = ();

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("JSON")
    }

    fn visit_map<A: MapAccess<'de>>(mut self, mut map: A) -> Result<(), A::Error> {
        let length = self.path.len();
        while let Some(name) = map.next_key::<String>()? {
            self.path.push('.');
            self.path.push_str(&name);
            map.next_value_seed(self.below())?;
            self.path.truncate(length);
        }
        Ok(())
    }

    fn visit_seq<A: SeqAccess<'de>>(mut self, mut list: A) -> Result<(), A::Error> {
        (self.found)(self.path);
        let length = self.path.len();
        self.path.push_str("[]");
        while list.next_element_seed(self.below())?.is_some() {}
        self.path.truncate(length);
        Ok(())
    }

    fn visit_bool<E>(self, _: bool) -> Result<(), E> {
        Ok(())
    }

    fn visit_i64<E>(self, _: i64) -> Result<(), E> {
        Ok(())
    }

    fn visit_u64<E>(self, _: u64) -> Result<(), E> {
        Ok(())
    }

    fn visit_f64<E>(self, _: f64) -> Result<(), E> {
        Ok(())
    }

    fn visit_str<E>(self, _: &str) -> Result<(), E> {
        Ok(())
    }

    fn visit_unit<E>(self) -> Result<(), E> {
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_list_in_the_place_of_named_answers_is_seen() {
        assert!(are_all_known(EXAMPLE));
        assert!(are_all_known(
            br#"{"floor": {"stands": [], "walk": [[1.0, 2.0]]}}"#
        ));
        for document in [
            r#"{"site": ["clay"]}"#,
            r#"{"floor": {"stands": [["chair", 1.0]]}}"#,
            "[1]",
            "{",
        ] {
            assert!(!are_all_known(document.as_bytes()), "{document}");
        }
    }
}
