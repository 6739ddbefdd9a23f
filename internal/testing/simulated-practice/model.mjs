/**
 * A student who learns to hold the exercises of a sheet at a tempo. What is assumed, and from where: ASSUMPTIONS.md.
 *
 * Conventions: tempi in quarter notes a minute; days from 0; chances 0 to 1.
 */

/** Softness of the minimum over skills and width of the curve of success, in bpm. */
const SOFT = 6;
const WIDTH = 5;
const ROOM = 40;
const SLOW_GAIN = 0.3;
const QUICK_KEPT = 0.2;
const LOOP_BARS = 4;
/** Loops after a change of exercise that the change makes harder. */
const TURNED_LOOPS = 2;
const FIRST_STABILITY_DAYS = 3;
const FADING = 0.1;

/** Cells and moves of an exercise with how often each comes in a bar, and the whole. */
function needsOf(exercise, index) {
  const counts = new Map();
  const add = (id) => counts.set(id, (counts.get(id) ?? 0) + 1);
  for (const { voice, pattern } of exercise.parts) {
    for (const bar of pattern.bars) {
      const cells = bar.map(({ text }) => text.toLowerCase());
      cells.forEach((text, beat) => {
        if (/^\.*$/.test(text)) return;
        add(`${voice} ${text}`);
        add(`${voice} ${cells.at(beat - 1)}>${text}`);
      });
    }
  }
  return [...counts, [`whole ${index}`, 1]];
}

/** A sheet as the model sees it: the skills of each exercise by number. */
export function sheetOf(lesson, carriesOver) {
  const ids = new Map();
  const idOf = (id, index) => {
    const key = carriesOver ? id : `${index} ${id}`;
    if (!ids.has(key)) ids.set(key, ids.size);
    return ids.get(key);
  };
  const exercises = lesson.exercises.map((exercise, index) =>
    needsOf(exercise, index).map(([id, times]) => ({ skill: idOf(id, index), times, id })),
  );
  return { exercises, skills: ids.size, kinds: [...ids.keys()], tempo: lesson.tempo };
}

function normal(random) {
  return Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
}

/** A student, unlike any other. */
export function createStudent(sheet, traits, random) {
  const { startBpm, goalBpm } = sheet.tempo;
  const own = startBpm * 0.95 + 10 * normal(random);
  const speed = traits.speed * Math.exp(0.4 * normal(random));
  const of = (make) => Float64Array.from({ length: sheet.skills }, make);
  const base = of(() => Math.max(25, Math.min(goalBpm, own + 8 * normal(random))));
  const cap = of((_, i) => {
    const free = goalBpm * 1.25;
    const stuckAt = startBpm + (0.2 + 0.6 * random.next()) * (goalBpm - startBpm);
    return Math.max((base[i] ?? 0) + 2, random.next() < traits.plateaus ? stuckAt : free);
  });
  return {
    ...{ sheet, traits, random, base, cap },
    slow: Float64Array.from(base),
    quick: of(() => 0),
    rate: of(() => speed * Math.exp(0.4 * normal(random))),
    stability: of(() => FIRST_STABILITY_DAYS),
    lastDay: of(() => -1),
    mood: 1,
    day: 0,
    row: { exercise: -1, loops: 0 },
  };
}

/** The tempo that some skills are held at together. */
function heldWith(student, needs, withQuick) {
  let sum = 0;
  for (const { skill } of needs) {
    const tempo = student.slow[skill] + (withQuick ? student.quick[skill] : 0);
    sum += Math.exp(-tempo / SOFT);
  }
  return -SOFT * Math.log(sum / needs.length);
}

/** The tempo that an exercise is held at on a later day. */
export function heldBpm(student, exercise) {
  return heldWith(student, student.sheet.exercises[exercise], false);
}

function chance(tempo, bpm) {
  return 1 / (1 + Math.exp((bpm - tempo) / WIDTH));
}

function learn(student, { skill, times }, bpm, share) {
  const { traits, row } = student;
  const tempo = student.slow[skill] + student.quick[skill];
  const p = chance(tempo, bpm);
  const off = traits.anyTempo ? 0 : (p - traits.challenge) / traits.challengeWidth;
  const teaches = Math.exp(-off * off) * student.rate[skill] * student.mood * Math.sqrt(times) * share;
  const room = Math.max(0, student.cap[skill] - student.slow[skill]) / ROOM;
  const fresh = traits.massing ? 1 / (1 + row.loops / 20) : 0.7;
  student.slow[skill] += SLOW_GAIN * teaches * Math.min(1, room) * fresh;
  student.quick[skill] +=
    0.5 * SLOW_GAIN * teaches * Math.min(1, room) * (1 - Math.min(1, student.quick[skill] / 8));
  if (student.cap[skill] - student.slow[skill] < 6) student.cap[skill] += traits.breaking * teaches;
  if (student.lastDay[skill] === student.day) return;
  const gap = student.lastDay[skill] < 0 ? 1 : student.day - student.lastDay[skill];
  student.stability[skill] *= 1 + 0.4 * Math.min(1.5, gap / student.stability[skill] + 0.3);
  student.lastDay[skill] = student.day;
}

/**
 * What an ear makes of a loop: it errs, and knows about where it went wrong.
 * @returns {{ verdict: import('@shedbook/core').LoopVerdict, weakest: any }}
 */
function hear(student, needs, isClean) {
  const { traits, random } = student;
  if (random.next() < traits.deaf) return { verdict: 'unheard', weakest: null };
  const errs = random.next() < (isClean ? traits.strict : traits.lenient);
  if (isClean !== errs) return { verdict: 'clean', weakest: null };
  const byTempo = [...needs]
    .filter(({ id }) => !id.startsWith('whole'))
    .sort((a, b) => student.slow[a.skill] - student.slow[b.skill]);
  const weakest = byTempo[Math.floor(random.next() ** 2 * byTempo.length)] ?? null;
  return { verdict: 'loose', weakest };
}

/**
 * Plays one loop of an exercise, or of a part of it.
 * @param {ReadonlySet<string> | null} ids the skills that are played alone, or null for the whole
 */
export function playLoop(student, exercise, bpm, ids = null) {
  const all = student.sheet.exercises[exercise];
  const needs = ids ? all.filter(({ id }) => ids.has(id)) : all;
  const name = ids ? `${exercise} ${[...ids]}` : exercise;
  if (student.row.exercise !== name) student.row = { exercise: name, loops: 0 };
  const turned = student.row.loops < TURNED_LOOPS ? student.traits.turning : 0;
  const isClean = student.random.next() < chance(heldWith(student, needs, true) - turned, bpm);
  for (const need of needs) {
    const alone = ids ? { ...need, times: LOOP_BARS } : need;
    learn(student, alone, bpm, ids ? student.traits.parts : 1);
  }
  student.row.loops += 1;
  return { ...hear(student, needs, isClean), isClean };
}

/** A visit is over: mostly failed, it frustrates. */
export function endVisit(student, cleanShare) {
  const { frustration } = student.traits;
  if (cleanShare < 0.4) student.mood *= 1 - frustration;
  else if (cleanShare >= 0.6) student.mood = Math.min(1, student.mood + 0.1);
}

/** Whether the student leaves the stand for today. */
export function leaves(student) {
  return student.traits.givesUp && student.mood < 0.5;
}

/** A night passes. */
export function sleep(student) {
  for (let i = 0; i < student.slow.length; i += 1) {
    student.quick[i] *= QUICK_KEPT;
    const kept = Math.exp((-FADING * student.traits.fading) / student.stability[i]);
    student.slow[i] = student.base[i] + (student.slow[i] - student.base[i]) * kept;
  }
  student.mood = (1 + student.mood) / 2;
  student.row = { exercise: -1, loops: 0 };
  student.day += 1;
}
