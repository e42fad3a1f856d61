//! Every figure and text of a document looked at without the document being written: a million designs are many.

use std::fmt::{self, Display};

use serde::Serialize;
use serde::ser::{self, Serializer};

/// What is wrong with the figures and texts that a design shows, each with the name under which it stands.
#[must_use]
pub fn figure_faults(shown: &impl Serialize, is_never_negative: fn(&str) -> bool) -> Vec<String> {
    let mut walk = Walk {
        name: "",
        is_never_negative,
        found: Vec::new(),
    };
    if let Err(Unwritable(why)) = shown.serialize(&mut walk) {
        walk.found.push(format!("it is no document: {why}"));
    }
    walk.found
}

struct Walk {
    name: &'static str,
    is_never_negative: fn(&str) -> bool,
    found: Vec<String>,
}

impl Walk {
    fn figure(&mut self, value: f64) {
        if !value.is_finite() || (value < 0.0 && (self.is_never_negative)(self.name)) {
            self.found.push(format!("{} is {value}", self.name));
        }
    }
}

/// Why a value is no document.
#[derive(Debug)]
struct Unwritable(String);

impl Display for Unwritable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Unwritable {}

impl ser::Error for Unwritable {
    fn custom<T: Display>(why: T) -> Self {
        Self(why.to_string())
    }
}

type Seen = Result<(), Unwritable>;

macro_rules! not_looked_at {
    ($($name:ident: $kind:ty),*) => { $(fn $name(self, _: $kind) -> Seen { Ok(()) })* };
}

impl Serializer for &mut Walk {
    type Ok = ();
    type Error = Unwritable;
    type SerializeSeq = Self;
    type SerializeTuple = Self;
    type SerializeTupleStruct = Self;
    type SerializeTupleVariant = Self;
    type SerializeMap = Self;
    type SerializeStruct = Self;
    type SerializeStructVariant = Self;

    not_looked_at!(
        serialize_bool: bool, serialize_u8: u8, serialize_u16: u16, serialize_u32: u32, serialize_u64: u64, serialize_char: char,
        serialize_bytes: &[u8], serialize_unit_struct: &'static str
    );

    fn serialize_i8(self, value: i8) -> Seen {
        self.serialize_i64(value.into())
    }
    fn serialize_i16(self, value: i16) -> Seen {
        self.serialize_i64(value.into())
    }
    fn serialize_i32(self, value: i32) -> Seen {
        self.serialize_i64(value.into())
    }
    #[allow(clippy::cast_precision_loss, reason = "only its sign matters")]
    fn serialize_i64(self, value: i64) -> Seen {
        self.figure(value as f64);
        Ok(())
    }
    fn serialize_f32(self, value: f32) -> Seen {
        self.serialize_f64(value.into())
    }
    fn serialize_f64(self, value: f64) -> Seen {
        self.figure(value);
        Ok(())
    }
    fn serialize_str(self, text: &str) -> Seen {
        let mut words = text.split(|letter: char| !letter.is_alphanumeric());
        if text.contains('\u{fffd}') || words.any(|word| matches!(word, "NaN" | "inf")) {
            self.found.push(format!("{} is {text:?}", self.name));
        }
        Ok(())
    }
    fn serialize_none(self) -> Seen {
        Ok(())
    }
    fn serialize_unit(self) -> Seen {
        Ok(())
    }
    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Seen {
        value.serialize(self)
    }
    fn serialize_unit_variant(self, _: &'static str, _: u32, _: &'static str) -> Seen {
        Ok(())
    }
    fn serialize_newtype_struct<T: Serialize + ?Sized>(self, _: &'static str, value: &T) -> Seen {
        value.serialize(self)
    }
    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        value: &T,
    ) -> Seen {
        value.serialize(self)
    }
    fn serialize_seq(self, _: Option<usize>) -> Result<Self, Unwritable> {
        Ok(self)
    }
    fn serialize_tuple(self, _: usize) -> Result<Self, Unwritable> {
        Ok(self)
    }
    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Self, Unwritable> {
        Ok(self)
    }
    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Self, Unwritable> {
        Ok(self)
    }
    fn serialize_map(self, _: Option<usize>) -> Result<Self, Unwritable> {
        Ok(self)
    }
    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Self, Unwritable> {
        Ok(self)
    }
    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Self, Unwritable> {
        Ok(self)
    }
}

/// Rows and cells: what is in them is looked at in turn.
macro_rules! of_many {
    ($($kind:ident . $part:ident),*) => { $(
        impl ser::$kind for &mut Walk {
            type Ok = ();
            type Error = Unwritable;
            fn $part<T: Serialize + ?Sized>(&mut self, value: &T) -> Seen { value.serialize(&mut **self) }
            fn end(self) -> Seen { Ok(()) }
        }
    )* };
}

of_many!(
    SerializeSeq.serialize_element,
    SerializeTuple.serialize_element,
    SerializeTupleStruct.serialize_field,
    SerializeTupleVariant.serialize_field
);

/// Members: a figure is told by the name of the last one that was opened.
macro_rules! of_members {
    ($($kind:ident),*) => { $(
        impl ser::$kind for &mut Walk {
            type Ok = ();
            type Error = Unwritable;
            fn serialize_field<T: Serialize + ?Sized>(&mut self, name: &'static str, value: &T) -> Seen {
                self.name = name;
                value.serialize(&mut **self)
            }
            fn end(self) -> Seen { Ok(()) }
        }
    )* };
}

of_members!(SerializeStruct, SerializeStructVariant);

impl ser::SerializeMap for &mut Walk {
    type Ok = ();
    type Error = Unwritable;
    fn serialize_key<T: Serialize + ?Sized>(&mut self, _: &T) -> Seen {
        Ok(())
    }
    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Seen {
        value.serialize(&mut **self)
    }
    // What a flattened section writes: its names are known while they are written only.
    fn serialize_entry<K: Serialize + ?Sized, V: Serialize + ?Sized>(
        &mut self,
        _: &K,
        value: &V,
    ) -> Seen {
        self.name = "a flattened figure";
        value.serialize(&mut **self)
    }
    fn end(self) -> Seen {
        Ok(())
    }
}
