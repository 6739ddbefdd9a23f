/**
 * What a key or a tap costs the page's own thread until it is painted, out of a trace of Chromium: on a machine that
 * others share, the wall's clock tells of them and not of the page.
 *
 * Conventions: milliseconds of processor time. Source: Trace Event Format (Google): complete events ("X") have `ts` and
 * `dur` on the wall's clock and `tdur` of the thread, in microseconds.
 */

import { groupBy } from '@shedbook/core';

/** What a trace has to tell of. */
export const CATEGORIES = ['devtools.timeline', 'toplevel'];

const PRESSES = new Set(['keydown', 'click']);
const PAINTS = new Set(['Paint', 'Layerize', 'Commit']);

/** Whole events of the thread that most presses came to, in order. */
function eventsOfPage(trace) {
  const events = trace.traceEvents.filter(({ ph }) => ph === 'X');
  const threadOf = ({ pid, tid }) => `${pid} ${tid}`;
  const presses = groupBy(
    events.filter(({ name }) => name === 'EventDispatch'),
    threadOf,
  );
  const [page] = [...presses].toSorted(([, a], [, b]) => b.length - a.length)[0] ?? [];
  return events.filter((each) => threadOf(each) === page).toSorted((a, b) => a.ts - b.ts);
}

const endOf = ({ ts, dur = 0 }) => ts + dur;

/** Processor time of each press until the next paint, in order. @param trace a trace as it was read */
export function processorToPaint(trace) {
  const events = eventsOfPage(trace);
  const tasks = events.filter(({ name }) => name.endsWith('RunTask'));
  const paints = events.filter(({ name }) => PAINTS.has(name));
  return events
    .filter(({ name, args }) => name === 'EventDispatch' && PRESSES.has(args.data.type))
    .flatMap((press) => {
      const paint = paints.find(({ ts }) => ts > endOf(press));
      const frame = paint && (tasks.find((task) => task.ts <= paint.ts && endOf(task) >= paint.ts) ?? paint);
      if (!frame) return [];
      const during = tasks.filter((task) => endOf(task) > press.ts && task.ts < endOf(frame));
      return [during.reduce((sum, { tdur = 0 }) => sum + tdur, 0) / 1000];
    });
}
