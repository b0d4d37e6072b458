//! Critical temperatures, equilibrium of austenite with ferrite and carbide, and the phase map.

mod gibbs;
