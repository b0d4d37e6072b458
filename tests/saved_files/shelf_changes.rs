//! What can be done to a shelf: names, deletions and their undoing, order, another shelf taken in.

use super::{changed, names, shelf};
use recalesce::save::{MOST_ROUTES, ShelfError, read};
use serde_json::json;

#[test]
fn names_and_identities_become_unique() {
    let text = changed(|v| {
        v["routes"][1] = v["routes"][0].clone();
        v["routes"][2]["name"] = json!("  ");
        v["routes"][3]["name"] = json!("x".repeat(201));
    });
    let loaded = read(&text).expect("a readable file");
    assert_eq!(
        names(&loaded.shelf),
        [
            "Marking knives",
            "Marking knives (2)",
            "Plane iron",
            "Centre punches"
        ]
    );
    assert_eq!(loaded.rejected.len(), 1);
    let mut ids: Vec<_> = loaded.shelf.items().iter().map(|i| i.id).collect();
    ids.sort();
    ids.dedup();
    assert_eq!(ids.len(), 4);
}

#[test]
fn a_deletion_can_be_undone() {
    let mut shelf = shelf();
    let before = shelf.clone();
    let id = shelf.items()[2].id;
    let deleted = shelf.delete(id).expect("deleted");
    assert_eq!(deleted.name(), "Plane irons");
    assert_eq!(shelf.items().len(), 4);
    assert_eq!(shelf.delete(id), Err(ShelfError::Gone));
    assert_eq!(shelf.restore(deleted), Ok(id));
    assert_eq!(shelf, before);
}

#[test]
fn a_deletion_can_be_undone_after_other_changes() {
    let mut shelf = shelf();
    let last = shelf.items()[4].clone();
    let deleted = shelf.delete(last.id).expect("deleted");
    let new = shelf.add(&last.name, last.route.clone()).expect("added");
    let restored = shelf.restore(deleted).expect("restored");
    assert_ne!(new, restored);
    assert_eq!(names(&shelf)[4..], ["Centre punches (2)", "Centre punches"]);
}

#[test]
fn routes_are_renamed_copied_and_moved() {
    let mut shelf = shelf();
    let [first, second] = [shelf.items()[0].id, shelf.items()[1].id];
    assert_eq!(shelf.rename(first, " Knives "), Ok(()));
    assert_eq!(shelf.rename(first, "Knives"), Ok(()));
    assert_eq!(shelf.rename(first, " "), Err(ShelfError::EmptyName));
    assert_eq!(
        shelf.rename(second, "Knives"),
        Err(ShelfError::NameTaken {
            name: "Knives".to_owned()
        })
    );
    assert_eq!(
        shelf.rename(second, &"x".repeat(201)),
        Err(ShelfError::LongName { length: 201 })
    );
    let copy = shelf.duplicate(first).expect("copied");
    let again = shelf.duplicate(copy).expect("copied");
    assert_eq!(names(&shelf)[..3], ["Knives", "Knives (2)", "Knives (3)"]);
    shelf.move_up(first).expect("stays first");
    shelf.move_down(first).expect("moved");
    shelf.move_to(again, usize::MAX).expect("moved");
    assert_eq!(
        names(&shelf),
        [
            "Knives (2)",
            "Knives",
            "Chisels, oil",
            "Plane irons",
            "Drawknife",
            "Centre punches",
            "Knives (3)"
        ]
    );
}

#[test]
fn a_shelf_takes_another_in() {
    let mut mine = shelf();
    let imported = mine.import(shelf());
    assert_eq!(imported.added.len(), 5);
    assert_eq!(imported.left_out, 0);
    assert_eq!(names(&mine)[5], "Marking knives (2)");
    while mine.import(shelf()).left_out == 0 {}
    assert_eq!(mine.items().len(), MOST_ROUTES);
    let route = mine.items()[0].route.clone();
    assert_eq!(mine.add("One more", route), Err(ShelfError::Full));
}

#[test]
fn long_names_make_room_for_their_number() {
    let mut shelf = shelf();
    let route = shelf.items()[0].route.clone();
    let long = "é".repeat(200);
    for _ in 0..3 {
        shelf.add(&long, route.clone()).expect("added");
    }
    let last = &shelf.items()[7].name;
    assert!(last.ends_with(" (3)") && last.chars().count() <= 200);
}
