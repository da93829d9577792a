//! Kinds that JSON writes by name. A table of names instead of generated code
//! for every name keeps the page small.

use serde::{Deserialize, Deserializer, Serializer};

/// A kind with a name of its own in JSON.
pub(crate) trait Named: Copy + 'static {
    /// What the kinds are kinds of, for an error.
    const WHAT: &'static str;
    /// Every kind.
    const ALL: &'static [Self];
    /// The name in JSON.
    fn name(self) -> &'static str;
}

pub(crate) fn read<'de, T: Named, D: Deserializer<'de>>(from: D) -> Result<T, D::Error> {
    let text = String::deserialize(from)?;
    T::ALL.iter().copied().find(|kind| kind.name() == text).ok_or_else(|| {
        let names: Vec<&str> = T::ALL.iter().map(|kind| kind.name()).collect();
        serde::de::Error::custom(no_such(T::WHAT, &text, &names))
    })
}

pub(crate) fn write<T: Named, S: Serializer>(kind: T, to: S) -> Result<S::Ok, S::Error> {
    to.serialize_str(kind.name())
}

fn no_such(what: &str, text: &str, names: &[&str]) -> String {
    format!("“{text}” is no {what}; it is one of: {}", names.join(", "))
}

/// Declares a kind, read and written by its name in JSON. Where what a reader sees is told too, it
/// begins each variant's doc.
macro_rules! named {
    ($what:literal: $(#[$attr:meta])* $vis:vis enum $kind:ident {
        $($(#[$doc:meta])* $variant:ident = $name:literal;)+
    }) => {
        $(#[$attr])*
        $vis enum $kind { $($(#[$doc])* $variant),+ }
        impl $kind {
            /// Every kind.
            pub const ALL: [$kind; [$($name),+].len()] = [$($kind::$variant),+];

            /// Its name in JSON.
            pub fn name(self) -> &'static str {
                match self {
                    $($kind::$variant => $name),+
                }
            }
        }
        impl crate::named::Named for $kind {
            const WHAT: &'static str = $what;
            const ALL: &'static [Self] = &<$kind>::ALL;
            fn name(self) -> &'static str {
                <$kind>::name(self)
            }
        }
        impl serde::Serialize for $kind {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                crate::named::write(*self, to)
            }
        }
        impl<'de> serde::Deserialize<'de> for $kind {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                crate::named::read(from)
            }
        }
    };
    ($what:literal, $label:ident: $(#[$attr:meta])* $vis:vis enum $kind:ident {
        $($(#[$doc:meta])* $variant:ident = $name:literal, $words:literal;)+
    }) => {
        crate::named::named! { $what:
            $(#[$attr])*
            $vis enum $kind { $(#[doc = $words] #[doc = ""] $(#[$doc])* $variant = $name;)+ }
        }
        impl $kind {
            /// What a reader sees.
            pub fn $label(self) -> &'static str {
                match self {
                    $($kind::$variant => $words),+
                }
            }
        }
    };
}
pub(crate) use named;

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::Named;
    use crate::case::{BagState, BedKind, ChargeSource, Feedstock, Winter};
    use crate::plan::Path;
    use crate::quantity::{Measures, Unit};
    use crate::ranges::Level;
    use crate::soil::{Method, PlantGroup, Property, Texture};

    fn come_back<T>()
    where
        T: Named + PartialEq + std::fmt::Debug + serde::Serialize + serde::de::DeserializeOwned,
    {
        let names: BTreeSet<_> = T::ALL.iter().map(|kind| kind.name()).collect();
        assert_eq!(names.len(), T::ALL.len(), "two kinds of {} share a name", T::WHAT);
        for kind in T::ALL {
            let json = serde_json::to_string(kind).unwrap();
            assert_eq!(json, format!("\"{}\"", kind.name()));
            assert_eq!(serde_json::from_str::<T>(&json).unwrap(), *kind);
        }
        let wrong = serde_json::from_str::<T>("\"moonlight\"").unwrap_err().to_string();
        assert!(wrong.contains("moonlight") && wrong.contains(T::WHAT), "{wrong}");
    }

    #[test]
    fn every_kind_comes_back_by_its_name_and_no_other_name_is_taken() {
        come_back::<Property>();
        come_back::<Method>();
        come_back::<Unit>();
        come_back::<Measures>();
        come_back::<Texture>();
        come_back::<PlantGroup>();
        come_back::<BedKind>();
        come_back::<Winter>();
        come_back::<BagState>();
        come_back::<Feedstock>();
        come_back::<ChargeSource>();
        come_back::<Path>();
        come_back::<Level>();
    }
}
