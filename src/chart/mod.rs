//! Charts as scenes in data units: clipping, planes, hit testing, colours, drawing over any backend.
