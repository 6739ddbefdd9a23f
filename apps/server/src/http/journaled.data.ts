/** Which routes are written into the journal once they have answered, and as what. */
import { type Deed, ROUTES, type Route, type RouteName } from '@shedbook/routes';
import { isTeachersWord } from '../store/log-rows.ts';

/** What was asked, as far as the journal looks at it. */
export interface Journaled {
  readonly params: Readonly<Record<string, unknown>>;
  readonly query: Readonly<Record<string, unknown>>;
  readonly body: unknown;
  readonly answer: unknown;
  /** The student whom it is about, where whoever answered said so. */
  readonly about?: string | undefined;
}

function field(value: unknown, name: string): unknown {
  return (value as Readonly<Record<string, unknown>> | null)?.[name];
}

/** Whether among the rows of practice that are added one is the teacher's word. */
function isPassed(body: unknown): boolean {
  return ((field(body, 'rows') ?? []) as readonly string[]).some(isTeachersWord);
}

/** The deed of each route; null where this time there is nothing to write. */
export const JOURNALED: Readonly<Partial<Record<RouteName, (asked: Journaled) => Deed | null>>> = {
  signIn: () => 'signed-in',
  usePasskey: () => 'signed-in',
  addPasskey: () => 'passkey-added',
  removePasskey: () => 'passkey-removed',
  acceptInvitation: () => 'teacher-joined',
  addTeacher: () => 'teacher-added',
  inviteTeacher: () => 'teacher-invited',
  saveTeacher: () => 'teacher-changed',
  removeTeacher: () => 'teacher-removed',
  handOver: () => 'student-handed-over',
  signOut: () => 'signed-out',
  makeLink: () => 'link-made',
  revokeLink: () => 'link-revoked',
  noteMinority: () => 'consent-noted',
  sendPractice: ({ answer }) => (Number(field(answer, 'added')) > 0 ? 'practice-sent' : null),
  takeInLog: ({ body }) => (isPassed(body) ? 'exercise-passed' : null),
  sendTake: () => 'take-sent',
  takeBack: () => 'take-taken-back',
  answerTake: ({ body }) => (field(body, 'isHeard') === true ? 'take-heard' : null),
  sayVoice: () => 'note-spoken',
  unsayVoice: () => 'note-taken-back',
  setInHour: () => 'exercises-set',
  keepTake: ({ body }) => (field(body, 'isKept') === true ? 'take-kept' : 'take-not-kept'),
  saveKeeping: () => 'keeping-set',
  exportPractice: () => 'practice-exported',
  exportEverything: () => 'everything-exported',
  backUp: () => 'backed-up',
  printProgress: () => 'progress-printed',
  eraseDemonstration: () => 'demonstration-erased',
  eraseLesson: () => 'lesson-erased',
  eraseHour: () => 'hour-erased',
  eraseLog: () => 'practice-erased',
  removeStudent: () => 'student-removed',
  restoreStudent: () => 'student-restored',
  eraseStudent: () => 'student-erased',
};

/** The student whom it is about, where question or answer says so. */
export function studentIn(name: RouteName, { params, query, answer, about }: Journaled): string | null {
  const told = about ?? field(answer, 'student') ?? query['student'];
  if (typeof told === 'string') return told;
  const { whose }: Route = ROUTES[name];
  return whose === 'student' && typeof params['id'] === 'string' ? params['id'] : null;
}
