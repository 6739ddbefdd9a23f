/** Private links on the desk: list, make, take back. */
import { drawCode } from '@shedbook/pack/serving';
import type { LanguageTag } from '@shedbook/words';
import type { LessonStore } from '../store/lessons.ts';
import type { LinkStore } from '../store/links.ts';
import type { StudentStore } from '../store/students.ts';
import type { PrivatePacks } from '../week/private-packs.ts';
import { lessonsSetFor } from '../week/students-week.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** What private links are made with. */
export interface LinkParts {
  readonly links: LinkStore;
  readonly students: StudentStore;
  readonly store: LessonStore;
  readonly privatePacks: PrivatePacks;
  /** Where others reach the server, with a slash at the end. */
  readonly address: () => string;
}

/** Answers the routes of private links. */
export function linkHandlers({ links, students, store, privatePacks, address }: LinkParts) {
  /** Makes the pages that a link opens while the teacher sends it, so that nobody waits for them. */
  const prepare = async (id: string, language: LanguageTag) => {
    const student = await students.read(id);
    const lessons = student ? await lessonsSetFor(student, store) : [];
    for (const lesson of lessons) await privatePacks.files(lesson, language);
  };
  return {
    listLinks: async ({ params }) => answer(await links.list(params.id)),
    makeLink: async ({ params, query }) => {
      const made = await links.make(params.id, query.language);
      if (!made) return refuse('no-such-student', {});
      // What cannot be made now is made, or said, when it is asked for.
      void prepare(params.id, query.language).catch(() => undefined);
      const whole = `${address()}practice/${made.token}/`;
      return answer({ link: made.link, address: whole, codeSvg: drawCode(whole) });
    },
    revokeLink: async ({ params }) => {
      const about = await links.ownerOf(params.id);
      const isGone = about !== null && (await links.revoke(params.id));
      return isGone ? { ...answer(null), about } : refuse('no-such-link', {});
    },
  } satisfies Partial<Handlers>;
}
