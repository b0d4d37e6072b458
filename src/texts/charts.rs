//! Words of the charts.
