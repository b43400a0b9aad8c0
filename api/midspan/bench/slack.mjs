/**
 * The state behind a movement, with its uncertainty, written by hand: what the core's calculation is
 * measured against, and nothing else. It says no words, holds no limits and trusts its input.
 */

function geometry(drive, centre) {
  const r1 = drive.pitch_mm / (2 * Math.sin(Math.PI / drive.crank_teeth));
  const r2 = drive.pitch_mm / (2 * Math.sin(Math.PI / drive.cam_teeth));
  const b = Math.asin((r2 - r1) / centre);
  const s = centre * Math.cos(b);
  const wraps = drive.crank_teeth * (Math.PI - 2 * b) + drive.cam_teeth * (Math.PI + 2 * b);
  return { r1, r2, s, taut: 2 * s + (drive.pitch_mm * wraps) / (2 * Math.PI) };
}

function readings(drive, centre, movement) {
  const { r1, r2, s, taut } = geometry(drive, centre);
  const m = Math.max(movement, 0);
  const excess = Math.hypot(s, m) - s;
  const elongation = (excess + taut) / (drive.links * drive.pitch_mm) - 1;
  const retard = (elongation * s * 180) / r2 / Math.PI;
  return {
    excess_mm: excess,
    elongation_percent: 100 * elongation,
    movement_mm: Math.sqrt(excess * (2 * s + excess)),
    sag_mm: Math.sqrt((3 * s * excess) / 8),
    crank_rock_deg: (excess * 180) / r1 / Math.PI,
    cam_retard_deg: retard,
    cam_retard_crank_deg: (retard * drive.cam_teeth) / drive.crank_teeth,
  };
}

const NORMAL = 1.9599639845400545;

/** P(|T| < t), by the finite sums. */
function within(t, dof) {
  const theta = Math.atan(t / Math.sqrt(dof));
  const square = Math.cos(theta) ** 2;
  let term = dof % 2 ? Math.cos(theta) : 1;
  let total = dof === 1 ? 0 : term;
  for (let j = dof % 2 ? 2 : 1; j < dof - 1; j += 2) {
    term *= (square * j) / (j + 1);
    total += term;
  }
  const sum = Math.sin(theta) * total;
  return dof % 2 ? ((theta + sum) * 2) / Math.PI : sum;
}

function coverage(dof) {
  if (dof === null) return NORMAL;
  let low = 0;
  let high = 1000;
  while (high - low > 1e-12 * high) {
    const middle = (low + high) / 2;
    if (within(middle, dof) < 0.95) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** JSON text in, JSON text out, as the core. */
export function slack(text) {
  const { drive, readings_mm: values } = JSON.parse(text);
  const n = values.length;
  const mean = values.reduce((sum, x) => sum + x, 0) / n;
  const spread = values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1);
  const parts = [Math.sqrt(spread / n), 0.25 / Math.sqrt(3), 0.1 / Math.sqrt(3)];
  const u = Math.hypot(...parts);
  const effective = Math.floor((u ** 4 / (parts[0] ** 4 / (n - 1))) * (1 + 1e-12));
  const expanded = u * coverage(effective > 1000 ? null : effective);
  const centre = drive.centre_distance_mm;
  const uC = 0.05 / Math.sqrt(3);
  const at = (x, c) => readings(drive, c, x);
  const [left, right] = [at(mean - u, centre), at(mean + u, centre)];
  const [near, far] = [at(mean, centre - uC), at(mean, centre + uC)];
  const middle = at(mean, centre);
  const state = {};
  const ends = (name) => {
    const [a, b] = [(right[name] - left[name]) / 2, (far[name] - near[name]) / 2];
    const total = Math.hypot(a, b);
    const [dx, dc] = [(expanded * a) / total, (NORMAL * uC * b) / total];
    return [total, at(mean - dx, centre - dc), at(mean + dx, centre + dc)];
  };
  const [uE, lowest, highest] = ends("excess_mm");
  const half = (highest.excess_mm - lowest.excess_mm) / 2;
  const share = uE / Math.max(half, uE);
  for (const name of Object.keys(middle)) {
    let [value, low, high, total] = [middle[name], 0, 0, 0];
    if (name === "movement_mm") {
      [value, low, high, total] = [mean, Math.max(mean - expanded, 0), mean + expanded, u];
    } else if (name === "sag_mm" || name === "crank_rock_deg") {
      [low, high] = [lowest[name], highest[name]];
      total = (share * (high - low)) / 2;
    } else {
      const [found, under, over] = ends(name);
      [low, high, total] = [under[name], over[name], found];
    }
    state[name] = { value, low, high, standard_uncertainty: total };
  }
  return JSON.stringify({ measured: { value: mean, standard_uncertainty: u }, state });
}
