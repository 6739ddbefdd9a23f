/** Hours: dated lessons of a student, what was written of them and what was set in them. */
import type { HourStore } from '../store/hours.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** What the answers are made with. */
export interface HourParts {
  readonly hours: HourStore;
}

/** Answers the routes of hours. */
export function hourHandlers({ hours }: HourParts) {
  return {
    listHours: async ({ params }) => {
      const list = await hours.of(params.id);
      return list ? answer(list) : refuse('no-such-student', {});
    },
    saveHour: async ({ params: { id, day }, body }) => {
      const outcome = await hours.save({ student: id, day }, body);
      if (outcome.kind === 'saved') return answer(outcome.hour);
      return outcome.kind === 'missing'
        ? refuse('no-such-student', {})
        : refuse('hour-changed', { kept: outcome.kept });
    },
    setInHour: async ({ params: { id, day }, body }) => {
      const outcome = await hours.set({ student: id, day }, body);
      if (outcome.kind === 'saved') return answer({ student: outcome.student, hour: outcome.hour });
      return outcome.kind === 'missing'
        ? refuse('no-such-student', {})
        : refuse('student-changed', { kept: outcome.kept });
    },
    eraseHour: async ({ params: { id, day } }) =>
      (await hours.erase({ student: id, day })) ? answer(null) : refuse('no-such-hour', {}),
  } satisfies Partial<Handlers>;
}
