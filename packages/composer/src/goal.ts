/**
 * A page that leads to a goal: from what a student has, by few bars, each with at most two new things of it.
 *
 * Conventions: a skill is a move between cells, or a place where a stroke meets other limbs (with the lead hand, with a
 * foot or the other hand only, alone); the goal's own bars come last. Exercises count from 1.
 * Source: greedy set cover (Chvátal 1979, Mathematics of Operations Research 4(3)) over the skills that the goal has and
 * the student has not; among bars that bring as many, the easiest first, so that simpler ones come before. Where a
 * shorter page could be, every choice is tried by iterative deepening (Korf 1985). Two new things a bar are a teacher's
 * judgement, ours.
 */
import { type Cell, type Exercise, type Lesson, struckSlots } from '@shedbook/core';
import { pageSource } from './compose.ts';
import { gradeExercise } from './grade.ts';
import { type Ground, groundOf } from './ground.ts';
import { compingPattern } from './page.ts';
import { splitBars } from './script.ts';

/** New skills that a bar may bring. */
const NEW_AT_ONCE = 2;

/** A page that leads to a goal. */
export interface GoalPage {
  /** The steps, easiest first, and the goal last; numbered from 1. */
  readonly exercises: readonly Exercise[];
  /** Number of skills that the goal has. */
  readonly skills: number;
  /** Number of them that the student has already. */
  readonly mastered: number;
  /** Number of skills that are new in each exercise. */
  readonly news: readonly number[];
}

function companyName(ground: Ground, beat: number, slot: number, slots: number): string {
  const { lead, foot, alone } = ground.company(beat, slot, slots);
  if (alone >= Math.max(lead, foot)) return 'alone';
  return lead >= foot ? 'lead' : 'foot';
}

/** The skills of looped bars. */
function skillsOf(ground: Ground, cells: readonly Cell[]): ReadonlySet<string> {
  const found = new Set<string>();
  cells.forEach((cell, beat) => {
    const slots = cell.marks.length;
    found.add(`${cell.text} ${cells[(beat + 1) % cells.length]?.text}`);
    for (const slot of struckSlots(cell)) {
      found.add(`${slot}/${slots} ${companyName(ground, beat % ground.length, slot, slots)}`);
    }
  });
  return found;
}

function skillsIn(lesson: Lesson, exercises: readonly Exercise[]): Set<string> {
  const found = new Set<string>();
  for (const exercise of exercises) {
    const cells = compingPattern(lesson, exercise).bars.flat();
    for (const skill of skillsOf(groundOf(lesson, exercise), cells)) found.add(skill);
  }
  return found;
}

interface Step {
  readonly cells: readonly Cell[];
  readonly points: number;
  /** Skills of the goal that the student has not. */
  readonly wanted: readonly string[];
  /** Points, and some for each skill that neither the goal nor the student has. */
  readonly cost: number;
}

/** Points that a bar is held to be harder by for each skill that the goal does not ask for. */
const STRAY = 0.5;

/** Bars of the vocabulary that are easier than the goal and have a skill of it, in ascending order of points. */
function stepsTo(lesson: Lesson, goal: Exercise, wanted: ReadonlySet<string>, has: ReadonlySet<string>) {
  const source = pageSource(lesson, { bars: 1 });
  const most = gradeExercise(lesson, goal).points;
  return source.pool.candidates
    .filter(({ points }) => points < most)
    .map(({ cells: indices, points }): Step => {
      const cells = Array.from(indices, (index) => source.rules.cells[index] as Cell);
      const skills = [...skillsOf(source.ground, cells)].filter((skill) => !has.has(skill));
      const asked = skills.filter((skill) => wanted.has(skill));
      return { cells, points, wanted: asked, cost: points + STRAY * (skills.length - asked.length) };
    })
    .filter((step) => step.wanted.length > 0);
}

function freshIn(skills: Iterable<string>, met: ReadonlySet<string>): number {
  return [...skills].filter((skill) => !met.has(skill)).length;
}

/** The next step: of those no easier than the last with at most two new skills one with most, the cheapest first. */
function nextStep(steps: readonly Step[], met: ReadonlySet<string>, least: number): Step | null {
  let best: Step | null = null;
  let most = 1;
  for (const step of steps) {
    const fresh = step.points < least ? 0 : freshIn(step.wanted, met);
    if (fresh > NEW_AT_ONCE || fresh < most) continue;
    if (!best || fresh > most || step.cost < best.cost) best = step;
    most = fresh;
  }
  return best;
}

/** Steps that take the cheapest at each turn until no more than two skills are left, or no step brings them nearer. */
function greedyPath(
  steps: readonly Step[],
  wanted: ReadonlySet<string>,
  has: ReadonlySet<string>,
): readonly Step[] {
  const met = new Set(has);
  const path: Step[] = [];
  while (freshIn(wanted, met) > NEW_AT_ONCE) {
    const step = nextStep(steps, met, path.at(-1)?.points ?? Number.NEGATIVE_INFINITY);
    if (!step) break;
    path.push(step);
    for (const skill of step.wanted) met.add(skill);
  }
  return path;
}

/** Looks that the exact search takes before it leaves the greedy path as it is. */
const LOOKS = 20_000;

/** A path of so many steps that leaves at most two skills, or null: every choice tried, the easiest first. */
function exactPath(
  steps: readonly Step[],
  missing: ReadonlySet<string>,
  length: number,
  looks: { left: number },
): readonly Step[] | null {
  const search = (left: ReadonlySet<string>, least: number, more: number): readonly Step[] | null => {
    if (left.size <= NEW_AT_ONCE) return [];
    if (left.size > NEW_AT_ONCE * (more + 1)) return null;
    const tried = new Set<string>();
    for (const step of steps) {
      if (step.points < least) continue;
      const fresh = step.wanted.filter((skill) => left.has(skill));
      const key = fresh.join();
      if (fresh.length === 0 || fresh.length > NEW_AT_ONCE || tried.has(key)) continue;
      tried.add(key);
      looks.left -= 1;
      if (looks.left < 0) return null;
      const rest = search(
        new Set([...left].filter((skill) => !fresh.includes(skill))),
        step.points,
        more - 1,
      );
      if (rest) return [step, ...rest];
    }
    return null;
  };
  return search(missing, Number.NEGATIVE_INFINITY, length);
}

/** The shortest path: no shorter one is left untried, unless that takes too many looks. */
function pathTo(
  steps: readonly Step[],
  wanted: ReadonlySet<string>,
  has: ReadonlySet<string>,
): readonly Step[] {
  const greedy = greedyPath(steps, wanted, has);
  const missing = new Set([...wanted].filter((skill) => !has.has(skill)));
  const looks = { left: LOOKS };
  const fewest = Math.max(0, Math.ceil(missing.size / NEW_AT_ONCE) - 1);
  for (let length = fewest; length < greedy.length; length += 1) {
    const path = exactPath(steps, missing, length, looks);
    if (path) return path;
  }
  return greedy;
}

/**
 * A page that leads to a goal.
 * @param mastered exercises that the student has: their moves and meetings are not practised again
 */
export function composeGoal(lesson: Lesson, goal: Exercise, mastered: readonly Exercise[]): GoalPage {
  const has = skillsIn(lesson, mastered);
  const wanted = skillsIn(lesson, [goal]);
  const path = pathTo(stepsTo(lesson, goal, wanted, has), wanted, has);
  const inBar = lesson.meter.beats.length;
  const led = path.map(({ cells }, i): Exercise => {
    const parts = [{ voice: lesson.comping, pattern: splitBars(cells, inBar) }];
    return { number: i + 1, name: null, parts, sticking: null, notes: null };
  });
  const met = new Set(has);
  const news = [...path.map((step) => step.wanted), [...wanted]].map((skills) => {
    const fresh = freshIn(skills, met);
    for (const skill of skills) met.add(skill);
    return fresh;
  });
  const exercises = [...led, { ...goal, number: led.length + 1 }];
  return { exercises, skills: wanted.size, mastered: wanted.size - freshIn(wanted, has), news };
}
