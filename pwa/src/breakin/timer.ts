/**
 * The time a step has run, by stamps and not by counting ticks: a hidden page's ticks come late or
 * not at all. No screen and no storage here.
 *
 * Within one life of the page two clocks are compared: the wall clock, which may be set, and the
 * page's own, which only goes forward but may stand still while the phone sleeps. Set back, the
 * page's own clock counts. Ahead, nobody can tell a phone that slept from a clock that was set, so
 * the wall clock counts, as an engine runs on beside a phone that sleeps; and it is told.
 */

export interface Stamp {
  /** Wall clock, ms since 1970. */
  wall: number;
  /** The page's own clock, ms. */
  mono: number;
  /** Which life of the page the own clock belongs to. */
  page: string;
}

interface Jump {
  at: number;
  /** How far the wall clock went beyond the page's own, ms; below 0 it was set back. */
  by: number;
}

/** What is kept of a running step; enough to go on exactly after the browser was killed. */
export interface Timer {
  step: string;
  /** Counted before `from`, ms. */
  counted: number;
  /** Since when it is running; null while it is paused. */
  from: Stamp | null;
  /** The last time that was seen for certain, and what was counted then. */
  seen: { wall: number; counted: number };
  jumps: Jump[];
}

/** Two clocks of one phone never differ by more, unless one stood still or was set. */
const TOLERANCE_MS = 1000;

const PAGE = globalThis.crypto?.randomUUID?.() ?? String(Math.random());

export function now(): Stamp {
  return { wall: Date.now(), mono: performance.now(), page: PAGE };
}

export function started(step: string, at: Stamp, counted = 0): Timer {
  return { step, counted, from: at, seen: { wall: at.wall, counted }, jumps: [] };
}

/** The timer brought up to a moment: what was counted, and a jump where the clocks disagree. */
export function upTo(timer: Timer, at: Stamp): Timer {
  const { from } = timer;
  if (!from) return timer;
  const wall = at.wall - from.wall;
  if (at.page === from.page) {
    const mono = at.mono - from.mono;
    const by = wall - mono;
    if (Math.abs(by) <= TOLERANCE_MS) return sightedAt(timer, at, timer.counted + mono);
    return rebased(timer, at, timer.counted + (by > 0 ? wall : mono), by);
  }
  // Another life of the page: only the wall clock went through both.
  if (at.wall >= timer.seen.wall) return rebased(timer, at, timer.counted + wall, 0);
  return rebased(timer, at, timer.seen.counted, at.wall - timer.seen.wall);
}

function sightedAt(timer: Timer, at: Stamp, counted: number): Timer {
  return { ...timer, seen: { wall: at.wall, counted } };
}

function rebased(timer: Timer, at: Stamp, counted: number, by: number): Timer {
  const jumps = by === 0 ? timer.jumps : [...timer.jumps, { at: at.wall, by }];
  return { ...timer, counted, from: at, seen: { wall: at.wall, counted }, jumps };
}

/** What a timer that was brought up to a moment has counted, ms. */
export const elapsed = (timer: Timer): number => timer.seen.counted;

export function paused(timer: Timer, at: Stamp): Timer {
  const last = upTo(timer, at);
  return { ...last, counted: elapsed(last), from: null };
}

export function resumed(timer: Timer, at: Stamp): Timer {
  return timer.from ? upTo(timer, at) : goneOn(timer, at);
}

function goneOn(timer: Timer, at: Stamp): Timer {
  return { ...timer, from: at, seen: { wall: at.wall, counted: timer.counted } };
}

/** Takes back what a jump ahead added: the engine stood still then, or the clock was set. */
export function withoutJump(timer: Timer, index: number): Timer {
  const jump = timer.jumps[index];
  if (!jump || jump.by <= 0) return timer;
  const less = (value: number) => Math.max(0, value - jump.by);
  return {
    ...timer,
    counted: less(timer.counted),
    seen: { ...timer.seen, counted: less(timer.seen.counted) },
    jumps: timer.jumps.filter((_, i) => i !== index),
  };
}

/** "29:59", or "1:00:00" from an hour on. Rounded up, so that 0:00 means done. */
export function clockText(ms: number): string {
  const all = Math.max(0, Math.ceil(ms / 1000 - 1e-6));
  const two = (value: number) => String(value).padStart(2, "0");
  const [h, m, s] = [Math.floor(all / 3600), Math.floor(all / 60) % 60, all % 60];
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}
