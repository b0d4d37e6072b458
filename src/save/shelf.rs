//! The shelf: saved routes in the user's order, and what can be done to them.

mod join;

use crate::route::{LONGEST_TEXT, Route, RouteFieldError, validate};
use recalesce_texts::save::{file::route_not_saved, shelf as texts};
use serde::{Deserialize, Serialize};
use std::collections::HashSet;
use std::fmt;

pub use join::Joined;

/// Most routes on a shelf.
pub const MOST_ROUTES: usize = 2000;

/// What tells one route of a shelf from another, whatever their names and order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct ItemId(pub u32);

/// A saved route.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShelfItem {
    /// Its identity on this shelf.
    pub id: ItemId,
    /// Its name, text of the user's own; no two are alike on a shelf.
    pub name: String,
    /// The route.
    pub route: Route,
}

/// Saved routes in the user's order. Names are unique, routes make sense, numbers are limited.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Shelf {
    items: Vec<ShelfItem>,
}

/// A deleted route and its place: what [`Shelf::restore`] needs to undo the deletion.
#[derive(Debug, Clone, PartialEq)]
pub struct Deleted {
    index: usize,
    item: ShelfItem,
}

impl Deleted {
    /// Name of the deleted route.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.item.name
    }
}

/// What an import brought.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Imported {
    /// The routes added, in order.
    pub added: Vec<ItemId>,
    /// How many found no room.
    pub left_out: usize,
}

/// Why the shelf refuses.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ShelfError {
    /// The shelf is full.
    Full,
    /// No such route.
    Gone,
    /// A name without text.
    EmptyName,
    /// A name that is too long.
    LongName {
        /// Its length, characters.
        length: usize,
    },
    /// Another route has this name.
    NameTaken {
        /// The name.
        name: String,
    },
    /// The route makes no sense.
    Route(#[from] RouteFieldError),
}

impl ShelfError {
    /// What is wrong. One text for all kinds: derived for each by itself, the page would be heavier.
    fn said(&self) -> String {
        match self {
            Self::Full => texts::full(MOST_ROUTES),
            Self::Gone => texts::GONE.to_owned(),
            Self::EmptyName => texts::EMPTY_NAME.to_owned(),
            Self::LongName { length } => texts::long_name(*length, LONGEST_TEXT),
            Self::NameTaken { name } => texts::name_taken(name),
            Self::Route(error) => route_not_saved(&error.to_string()),
        }
    }
}

impl fmt::Display for ShelfError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said())
    }
}

impl Shelf {
    /// The routes in order.
    #[must_use]
    pub fn items(&self) -> &[ShelfItem] {
        &self.items
    }

    /// One route.
    #[must_use]
    pub fn get(&self, id: ItemId) -> Option<&ShelfItem> {
        self.items.iter().find(|item| item.id == id)
    }

    /// Adds a route at the end. An empty name becomes the description of the piece; a name that
    /// is taken gets a number.
    ///
    /// # Errors
    /// A full shelf, a name too long, or a route that makes no sense.
    pub fn add(&mut self, name: &str, route: Route) -> Result<ItemId, ShelfError> {
        self.insert(self.items.len(), None, name, route)
    }

    /// Stores a changed route under the name it has.
    ///
    /// # Errors
    /// A route that is gone or makes no sense.
    pub fn replace(&mut self, id: ItemId, route: Route) -> Result<(), ShelfError> {
        validate(&route)?;
        let index = self.index(id)?;
        if let Some(item) = self.items.get_mut(index) {
            item.route = route;
        }
        Ok(())
    }

    /// Gives a route another name.
    ///
    /// # Errors
    /// A route that is gone, or a name that is empty, too long or taken.
    pub fn rename(&mut self, id: ItemId, name: &str) -> Result<(), ShelfError> {
        let name = name.trim();
        if name.is_empty() {
            return Err(ShelfError::EmptyName);
        }
        check_length(name)?;
        let index = self.index(id)?;
        if self.items.iter().any(|o| o.id != id && o.name == name) {
            return Err(ShelfError::NameTaken {
                name: name.to_owned(),
            });
        }
        if let Some(item) = self.items.get_mut(index) {
            item.name = name.to_owned();
        }
        Ok(())
    }

    /// Puts a copy right after a route.
    ///
    /// # Errors
    /// A route that is gone, or a full shelf.
    pub fn duplicate(&mut self, id: ItemId) -> Result<ItemId, ShelfError> {
        let index = self.index(id)?;
        let Some(ShelfItem { name, route, .. }) = self.items.get(index).cloned() else {
            return Err(ShelfError::Gone);
        };
        self.insert(index + 1, None, &name, route)
    }

    /// Takes a route off the shelf; the value returned puts it back.
    ///
    /// # Errors
    /// A route that is gone already.
    pub fn delete(&mut self, id: ItemId) -> Result<Deleted, ShelfError> {
        let index = self.index(id)?;
        let item = self.items.remove(index);
        Ok(Deleted { index, item })
    }

    /// Puts a deleted route back in its place, or at the end if the shelf has become shorter. Its
    /// name gets a number if it was taken meanwhile.
    ///
    /// # Errors
    /// A full shelf.
    pub fn restore(&mut self, deleted: Deleted) -> Result<ItemId, ShelfError> {
        let Deleted { index, item } = deleted;
        let index = index.min(self.items.len());
        self.insert(index, Some(item.id), &item.name, item.route)
    }

    /// Moves a route one place towards the front; the first stays.
    ///
    /// # Errors
    /// A route that is gone.
    pub fn move_up(&mut self, id: ItemId) -> Result<(), ShelfError> {
        let index = self.index(id)?;
        self.move_to(id, index.saturating_sub(1))
    }

    /// Moves a route one place towards the end; the last stays.
    ///
    /// # Errors
    /// A route that is gone.
    pub fn move_down(&mut self, id: ItemId) -> Result<(), ShelfError> {
        let index = self.index(id)?;
        self.move_to(id, index + 1)
    }

    /// Moves a route to a place counted from 0, or to the end if there are fewer.
    ///
    /// # Errors
    /// A route that is gone.
    pub fn move_to(&mut self, id: ItemId, place: usize) -> Result<(), ShelfError> {
        let index = self.index(id)?;
        let item = self.items.remove(index);
        self.items.insert(place.min(self.items.len()), item);
        Ok(())
    }

    /// Adds the routes of another shelf at the end, under new names where names are taken.
    pub fn import(&mut self, other: Self) -> Imported {
        let mut imported = Imported::default();
        for item in other.items {
            match self.insert(self.items.len(), Some(item.id), &item.name, item.route) {
                Ok(id) => imported.added.push(id),
                Err(_) => imported.left_out += 1,
            }
        }
        imported
    }

    /// The one way in. `wanted` is the identity to keep unless it is taken.
    pub(super) fn insert(
        &mut self,
        place: usize,
        wanted: Option<ItemId>,
        name: &str,
        route: Route,
    ) -> Result<ItemId, ShelfError> {
        if self.items.len() >= MOST_ROUTES {
            return Err(ShelfError::Full);
        }
        validate(&route)?;
        let name = [name, route.piece.as_str(), texts::UNNAMED]
            .into_iter()
            .map(str::trim)
            .find(|candidate| !candidate.is_empty())
            .unwrap_or(texts::UNNAMED);
        check_length(name)?;
        let name = self.unused_name(name);
        let id = wanted
            .filter(|&id| self.get(id).is_none())
            .unwrap_or_else(|| self.unused_id());
        let place = place.min(self.items.len());
        self.items.insert(place, ShelfItem { id, name, route });
        Ok(id)
    }

    fn index(&self, id: ItemId) -> Result<usize, ShelfError> {
        self.items
            .iter()
            .position(|item| item.id == id)
            .ok_or(ShelfError::Gone)
    }

    /// An identity above all in use, so that one just freed by a deletion stays free for its
    /// return; after the last number, the first gap.
    fn unused_id(&self) -> ItemId {
        let largest = self.items.iter().map(|item| item.id.0).max().unwrap_or(0);
        largest.checked_add(1).map_or_else(
            || {
                let gap = (1..u32::MAX).find(|&n| self.get(ItemId(n)).is_none());
                ItemId(gap.unwrap_or(0))
            },
            ItemId,
        )
    }

    /// The name itself, or with the first number that makes it unused: `Chisel (2)`. A number
    /// that it already has is counted on; a name at the limit of length is shortened for it.
    fn unused_name(&self, name: &str) -> String {
        if self.items.iter().all(|item| item.name != name) {
            return name.to_owned();
        }
        let (stem, _) = stem_and_number(name);
        let taken: HashSet<u32> = self
            .items
            .iter()
            .map(|item| stem_and_number(&item.name))
            .filter_map(|(other, number)| number.filter(|_| other == stem))
            .collect();
        let number = (2..u32::MAX).find(|n| !taken.contains(n));
        format!("{stem} ({})", number.unwrap_or(0))
    }
}

/// A name without the number in brackets at its end, shortened to leave room for one, and the
/// number.
fn stem_and_number(name: &str) -> (&str, Option<u32>) {
    const MOST_DIGITS: usize = 9;
    let (stem, number) = name
        .strip_suffix(')')
        .and_then(|opened| opened.rsplit_once(" ("))
        .filter(|(_, digits)| {
            digits.len() <= MOST_DIGITS && digits.bytes().all(|b| b.is_ascii_digit())
        })
        .and_then(|(stem, digits)| Some((stem, Some(digits.parse().ok()?))))
        .unwrap_or((name, None));
    let room = LONGEST_TEXT - MOST_DIGITS - " ()".len();
    let end = stem
        .char_indices()
        .nth(room)
        .map_or(stem.len(), |(at, _)| at);
    (stem.get(..end).unwrap_or(stem), number)
}

fn check_length(name: &str) -> Result<(), ShelfError> {
    let length = name.chars().count();
    if length > LONGEST_TEXT {
        return Err(ShelfError::LongName { length });
    }
    Ok(())
}
