// A made-up probe curve: the 12.5 mm cylinder of a nickel alloy in an oil that exists nowhere.

const RADIUS_M = 6.25e-3;
const NODES = 25;
const CONDUCTIVITY = 22;
const CAPACITY = 8470 * 550;

/** Heat transfer, W/m²K, of the oil: convection, boiling, a film. */
function heatTransfer(surface) {
  const boiling = 2600 * Math.exp(-(((surface - 520) / 110) ** 2));
  return 380 + boiling + 350 / (1 + Math.exp((640 - surface) / 30));
}

/** Readings of the centre, `[time s, temperature °C]`, every 20 ms from entry; scatter as asked, always the same. */
export function readings({ bath = 50, seconds = 40, every = 0.02, scatter = 0.3 } = {}) {
  const width = RADIUS_M / NODES;
  const step = 0.2 * ((width * width * CAPACITY) / CONDUCTIVITY);
  const temperature = new Array(NODES).fill(850);
  let seed = 1;
  const random = () => {
    seed = (seed * 48271) % 2147483647;
    return seed / 2147483647;
  };
  const noise = () => scatter * Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
  const rows = [];
  let next = 0;
  for (let time = 0; time <= seconds; time += step) {
    while (time >= next) {
      rows.push([next, temperature[0] + noise()]);
      next += every;
    }
    // Ring by ring: what comes in from outside less what goes on inwards.
    const flow = (outer) => (2 * Math.PI * outer * width * CONDUCTIVITY * (temperature[outer] - temperature[outer - 1])) / width;
    const surface = temperature[NODES - 1];
    for (let ring = 0; ring < NODES; ring += 1) {
      const lost = 2 * Math.PI * RADIUS_M * heatTransfer(surface) * (surface - bath);
      const gained = (ring === NODES - 1 ? -lost : flow(ring + 1)) - (ring === 0 ? 0 : flow(ring));
      const area = Math.PI * ((ring + 1) ** 2 - ring ** 2) * width * width;
      temperature[ring] += (step * gained) / (area * CAPACITY);
    }
  }
  return rows;
}

/** The readings as a logger writes them. */
export function curveText({ heading = "made up, no measurement\ntime s,temperature °C", ...options } = {}) {
  const lines = readings(options).map(([time, temperature]) => `${time.toFixed(3)},${temperature.toFixed(2)}`);
  return [heading, ...lines].join("\n");
}
