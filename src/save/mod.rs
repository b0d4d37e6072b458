//! The file format of routes and shelves: versions, migrations, checks. Pure.
