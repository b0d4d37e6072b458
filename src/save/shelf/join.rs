//! One shelf that was changed in two windows: the changes of both in one, so that neither loses what was
//! done there.

use super::{ItemId, Shelf, ShelfItem, stem_and_number};
use crate::route::Route;

/// What two windows have made of one shelf.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Joined {
    /// The changes of both.
    pub shelf: Shelf,
    /// Names of the routes that were added because both had changed the same one: it stays as the one
    /// window left it, and these are as the other did.
    pub twice: Vec<String>,
    /// Names of the routes that found no room.
    pub left_out: Vec<String>,
}

impl Shelf {
    /// The changes that `one` and `other` have made to the shelf `before`, together. What either has
    /// added or changed is there; what one has taken off is gone unless the other has changed it; what
    /// both have changed otherwise is there twice. Routes that only one has moved stand as it has them.
    #[must_use]
    pub fn joined(before: &Self, one: Self, other: Self) -> Joined {
        let (under, over) = if other.is_in_order_of(before) {
            (one, other)
        } else {
            (other, one)
        };
        // Two windows that join at the same time see what the other has made of it.
        let has_come = |item: &ShelfItem| {
            let changed = |is: &&ShelfItem| before.get(is.id) != Some(*is);
            let mut known = under.items.iter().filter(changed);
            known.any(|is| is.route == item.route && stem(is) == stem(item))
        };
        let mut joined = Joined {
            shelf: under.clone(),
            ..Joined::default()
        };
        let is_gone =
            |item: &ShelfItem| over.get(item.id).is_none() && before.get(item.id) == Some(item);
        joined.shelf.items.retain(|item| !is_gone(item));
        let mut place = 0;
        let mut set = Vec::new();
        for item in &over.items {
            if let Ok(index) = joined.shelf.index(item.id) {
                place = index + 1;
            }
            let (was, is) = (before.get(item.id), under.get(item.id));
            if was == Some(item) || is == Some(item) {
                continue;
            }
            let is_both = was.is_some() && is.is_some();
            if let (Some(was), Some(is)) = (was, is)
                && let Some((name, route)) = both(was, is, item)
            {
                joined.shelf.set(item, name, route);
                set.push(item.id);
            } else if was.is_some() && is.is_none() || !has_come(item) {
                joined.add(&mut place, item, is_both);
            }
        }
        // Not before all have theirs: two that have changed places would be in each other's way.
        for id in set {
            joined.shelf.part_names(id);
        }
        joined
    }

    /// Whether its routes stand as those of another do, as far as both have them.
    fn is_in_order_of(&self, other: &Self) -> bool {
        let both = |of: &Self, with: &Self| {
            let ids = of.items.iter().map(|item| item.id);
            ids.filter(|id| with.get(*id).is_some()).collect::<Vec<_>>()
        };
        both(self, other) == both(other, self)
    }

    /// Gives the route of an item's identity a name, also one that is taken, and a content.
    fn set(&mut self, of: &ShelfItem, name: &str, route: &Route) {
        if let Ok(index) = self.index(of.id)
            && let Some(item) = self.items.get_mut(index)
        {
            name.clone_into(&mut item.name);
            item.route = route.clone();
        }
    }

    /// Gives the route of an identity a name of its own where another has the same.
    fn part_names(&mut self, id: ItemId) {
        let Some(name) = self.get(id).map(|item| item.name.clone()) else {
            return;
        };
        let is_taken = self.items.iter().any(|o| o.id != id && o.name == name);
        let unused = is_taken.then(|| self.unused_name(&name));
        if let (Some(name), Ok(index)) = (unused, self.index(id))
            && let Some(item) = self.items.get_mut(index)
        {
            item.name = name;
        }
    }
}

impl Joined {
    fn add(&mut self, place: &mut usize, item: &ShelfItem, is_twice: bool) {
        let (name, route) = (&item.name, item.route.clone());
        match self.shelf.insert(*place, Some(item.id), name, route) {
            Ok(id) => {
                *place += 1;
                let added = self.shelf.get(id).filter(|_| is_twice);
                self.twice.extend(added.map(|item| item.name.clone()));
            }
            Err(_) => self.left_out.push(name.clone()),
        }
    }
}

/// Name and route after two changes; none where both have changed the same of it.
fn both<'a>(
    was: &ShelfItem,
    one: &'a ShelfItem,
    other: &'a ShelfItem,
) -> Option<(&'a str, &'a Route)> {
    let name = changed(&was.name, &one.name, &other.name)?;
    Some((name, changed(&was.route, &one.route, &other.route)?))
}

fn changed<'a, T: PartialEq>(was: &T, one: &'a T, other: &'a T) -> Option<&'a T> {
    if one == was || one == other {
        Some(other)
    } else {
        (other == was).then_some(one)
    }
}

/// A name without its number.
fn stem(item: &ShelfItem) -> &str {
    stem_and_number(&item.name).0
}

#[cfg(test)]
mod tests {
    use super::super::MOST_ROUTES;
    use super::*;

    fn names(shelf: &Shelf) -> Vec<&str> {
        shelf.items().iter().map(|item| &*item.name).collect()
    }

    fn shelf(names: &[&str]) -> Shelf {
        let mut shelf = Shelf::default();
        for name in names {
            shelf.add(name, Route::example()).unwrap();
        }
        shelf
    }

    fn hotter(by_k: f64) -> Route {
        let mut route = Route::example();
        route.soak.temperature_c += by_k;
        route
    }

    /// Both ways round, since no window is the first.
    fn joined(before: &Shelf, one: &Shelf, other: &Shelf) -> [Joined; 2] {
        [
            Shelf::joined(before, one.clone(), other.clone()),
            Shelf::joined(before, other.clone(), one.clone()),
        ]
    }

    #[test]
    fn what_one_window_alone_has_done_is_taken_over() {
        let before = shelf(&["a", "b", "c"]);
        let mut one = before.clone();
        one.rename(ItemId(1), "first").unwrap();
        one.delete(ItemId(2)).unwrap();
        one.duplicate(ItemId(3)).unwrap();
        one.move_up(ItemId(3)).unwrap();
        for joined in joined(&before, &one, &before) {
            assert_eq!(joined.shelf, one);
            assert_eq!(joined.twice, Vec::<String>::new());
        }
    }

    #[test]
    fn routes_that_both_have_added_are_all_there() {
        let before = shelf(&["a"]);
        let (mut one, mut other) = (before.clone(), before.clone());
        // Of one identity, and two of one name.
        one.add("x", hotter(1.0)).unwrap();
        one.add("z", hotter(3.0)).unwrap();
        other.add("y", hotter(2.0)).unwrap();
        other.add("z", hotter(4.0)).unwrap();
        for joined in joined(&before, &one, &other) {
            let mut names = names(&joined.shelf);
            names.sort_unstable();
            assert_eq!(names, ["a", "x", "y", "z", "z (2)"]);
            assert_eq!(joined.twice, Vec::<String>::new());
        }
    }

    #[test]
    fn a_new_name_and_a_new_route_of_one_item_go_together() {
        let before = shelf(&["a", "b"]);
        let (mut one, mut other) = (before.clone(), before.clone());
        one.rename(ItemId(1), "chisel").unwrap();
        other.replace(ItemId(1), hotter(5.0)).unwrap();
        for joined in joined(&before, &one, &other) {
            assert_eq!(names(&joined.shelf), ["chisel", "b"]);
            assert_eq!(joined.shelf.get(ItemId(1)).unwrap().route, hotter(5.0));
        }
    }

    #[test]
    fn what_both_have_changed_is_kept_twice_and_named() {
        let before = shelf(&["a", "b"]);
        let (mut one, mut other) = (before.clone(), before.clone());
        one.replace(ItemId(1), hotter(5.0)).unwrap();
        other.replace(ItemId(1), hotter(7.0)).unwrap();
        for joined in joined(&before, &one, &other) {
            assert_eq!(names(&joined.shelf), ["a", "a (2)", "b"]);
            assert_eq!(joined.twice, ["a (2)"]);
        }
    }

    #[test]
    fn taken_off_here_and_changed_there_it_stays() {
        let before = shelf(&["a", "b", "c"]);
        let (mut one, mut other) = (before.clone(), before.clone());
        one.delete(ItemId(1)).unwrap();
        one.delete(ItemId(2)).unwrap();
        other.replace(ItemId(1), hotter(7.0)).unwrap();
        for joined in joined(&before, &one, &other) {
            assert_eq!(names(&joined.shelf), ["a", "c"]);
            assert_eq!(joined.shelf.get(ItemId(1)).unwrap().route, hotter(7.0));
        }
    }

    #[test]
    fn moved_here_and_added_there() {
        let before = shelf(&["a", "b", "c"]);
        let (mut one, mut other) = (before.clone(), before.clone());
        one.move_to(ItemId(3), 0).unwrap();
        other.add("d", hotter(1.0)).unwrap();
        for joined in joined(&before, &one, &other) {
            assert_eq!(names(&joined.shelf), ["c", "d", "a", "b"]);
        }
    }

    #[test]
    fn two_windows_that_join_at_once_come_to_the_same() {
        let before = shelf(&["a", "b"]);
        let (mut one, mut other) = (before.clone(), before.clone());
        one.replace(ItemId(1), hotter(5.0)).unwrap();
        one.add("x", hotter(1.0)).unwrap();
        other.replace(ItemId(1), hotter(7.0)).unwrap();
        other.add("y", hotter(2.0)).unwrap();
        let [first, second] = joined(&before, &one, &other).map(|joined| joined.shelf);
        let again = joined(&before, &first, &second);
        let routes = |shelf: &Shelf, name: fn(&ShelfItem) -> &str| {
            let items = shelf.items().iter();
            let mut all: Vec<_> = items
                .map(|item| {
                    let soak_c = item.route.soak.temperature_c;
                    (name(item).to_owned(), soak_c.to_bits())
                })
                .collect();
            all.sort();
            all
        };
        assert_eq!(first.items().len(), 5);
        for joined in &again {
            assert_eq!(routes(&joined.shelf, stem), routes(&first, stem));
            assert_eq!(joined.twice, Vec::<String>::new());
        }
        // Which of the two has the number is settled by what the one writes over what the other has seen.
        let settled = Shelf::joined(&second, second.clone(), first.clone()).shelf;
        assert_eq!(
            routes(&settled, |item| &item.name),
            routes(&first, |item| &item.name)
        );
    }

    #[test]
    fn what_finds_no_room_is_named() {
        let names: Vec<String> = (1..MOST_ROUTES).map(|n| n.to_string()).collect();
        let before = shelf(&names.iter().map(String::as_str).collect::<Vec<_>>());
        let (mut one, mut other) = (before.clone(), before.clone());
        one.add("x", hotter(1.0)).unwrap();
        other.add("y", hotter(2.0)).unwrap();
        let joined = Shelf::joined(&before, one, other);
        assert_eq!(joined.shelf.items().len(), MOST_ROUTES);
        assert_eq!(joined.left_out, ["y"]);
    }
}
