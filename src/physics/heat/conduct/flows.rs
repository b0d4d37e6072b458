//! Heat that flows between the nodes and through the faces: rates, heat stored and Jacobian of a state.

use super::Conduction;
use crate::heat::Medium;
use crate::heat::mesh::{Link, Mesh};
use crate::heat::properties::Local;
use crate::heat::turning::Turned;

impl<const W: usize> Conduction<'_, W> {
    /// Rates, heat stored per kelvin and Jacobian at the present state.
    pub(super) fn linearise(&mut self, medium: &Medium, agitation: f64) {
        let half = W / 2;
        let mesh = self.mesh;
        for (local, &t) in self.locals.iter_mut().zip(&self.temperature_c) {
            *local = self.material.at(t);
        }
        if let Some(turned) = self.turned.as_mut().filter(|turned| turned.is_mixed) {
            turned.mix(&self.temperature_c, &mut self.locals);
        }
        for ((storage, local), volume) in
            self.storage.iter_mut().zip(&self.locals).zip(&mesh.volume)
        {
            *storage = local.capacity * volume;
        }
        self.jacobian.fill([0.0; W]);
        // The flux first, in W; divided by the heat stored at the end.
        let rate = &mut self.rate_k_per_s;
        let jacobian = &mut self.jacobian;
        start_from_sources(rate, self.turned.as_ref(), mesh);
        for link in &mesh.links {
            let &Link { from, to, .. } = link;
            let flux = flow(link, &self.locals, self.turned.as_ref());
            let [by_a, by_b] = slopes(link, &self.locals, self.turned.as_ref());
            let stride = to - from;
            rate[from] -= flux;
            rate[to] += flux;
            jacobian[from][half] -= by_a;
            jacobian[from][half + stride] += by_b;
            jacobian[to][half - stride] += by_a;
            jacobian[to][half] -= by_b;
        }
        for &(i, area) in &mesh.faces {
            let (flux, slope) = medium.flux(self.temperature_c[i], agitation);
            rate[i] -= area * flux;
            jacobian[i][half] -= area * slope;
        }
        if let Some(air) = self.air {
            for &(i, area) in &mesh.faces_in_air {
                let (flux, slope) = air.flux(self.temperature_c[i], 1.0);
                rate[i] -= area * flux;
                jacobian[i][half] -= area * slope;
            }
        }
        for (((rate, row), local), storage) in rate
            .iter_mut()
            .zip(jacobian.iter_mut())
            .zip(&self.locals)
            .zip(&self.storage)
        {
            row[half] -= *rate * local.capacity_slope / local.capacity;
            *rate /= storage;
        }
    }

    /// Rates at the state in `stage_c`, into `stage_rate`.
    pub(super) fn rates(&mut self, medium: &Medium, agitation: f64) {
        let mesh = self.mesh;
        for (local, &t) in self.locals.iter_mut().zip(&self.stage_c) {
            *local = self.material.at(t);
        }
        if let Some(turned) = self.turned.as_mut().filter(|turned| turned.is_mixed) {
            turned.mix(&self.stage_c, &mut self.locals);
        }
        let rate = &mut self.stage_rate;
        start_from_sources(rate, self.turned.as_ref(), mesh);
        for link in &mesh.links {
            let flux = flow(link, &self.locals, self.turned.as_ref());
            rate[link.from] -= flux;
            rate[link.to] += flux;
        }
        for &(i, area) in &mesh.faces {
            rate[i] -= area * medium.flux(self.stage_c[i], agitation).0;
        }
        if let Some(air) = self.air {
            for &(i, area) in &mesh.faces_in_air {
                rate[i] -= area * air.flux(self.stage_c[i], 1.0).0;
            }
        }
        for ((rate, local), volume) in rate.iter_mut().zip(&self.locals).zip(&mesh.volume) {
            *rate /= local.capacity * volume;
        }
    }
}

/// Heat that comes up in each node, W.
#[inline]
fn start_from_sources(heat: &mut [f64], turned: Option<&Turned<'_>>, mesh: &Mesh) {
    match turned {
        Some(turned) if turned.is_mixed => {
            for ((heat, source), volume) in heat.iter_mut().zip(&turned.source).zip(&mesh.volume) {
                *heat = source * volume;
            }
        }
        _ => heat.fill(0.0),
    }
}

/// Heat flow along a link, W. Both ends are taken as the same mixture: no heat flows between nodes of one
/// temperature.
#[inline(always)]
fn flow(link: &Link, locals: &[Local], turned: Option<&Turned<'_>>) -> f64 {
    let fall = |of: &[Local]| of[link.from].potential - of[link.to].potential;
    let own = fall(locals);
    link.conductance
        * match turned.filter(|turned| turned.is_mixed) {
            None => own,
            Some(turned) => own + turned.fraction_along(link) * (fall(&turned.locals) - own),
        }
}

/// Its derivatives by the temperatures of its ends, W/K, the second with its sign turned.
#[inline(always)]
fn slopes(link: &Link, locals: &[Local], turned: Option<&Turned<'_>>) -> [f64; 2] {
    let [from, to] = [link.from, link.to];
    let own = [locals[from].conductivity, locals[to].conductivity];
    let [from_w_mk, to_w_mk] = match turned.filter(|turned| turned.is_mixed) {
        None => own,
        Some(turned) => {
            let product = &turned.locals;
            let fraction = turned.fraction_along(link);
            [
                own[0] + fraction * (product[from].conductivity - own[0]),
                own[1] + fraction * (product[to].conductivity - own[1]),
            ]
        }
    };
    [link.conductance * from_w_mk, link.conductance * to_w_mk]
}
