//! In the browser: mounts the page. In a terminal: answers questions, one JSON object a line.

fn main() {}
