/**
 * The guard between teachers: whose a route is stands in the table of routes, so that none is answered without it.
 *
 * Conventions: what is another teacher's student's is not there, in the very words in which nothing is; what another
 * teacher made is there for everybody, and theirs to change.
 */
import {
  type Refusal,
  type RefusalCode,
  type Route,
  refusal,
  type Teacher,
  type Whose,
} from '@shedbook/routes';
import type { Owners } from '../store/owners.ts';

/** What the guard asks. */
export interface GuardParts {
  readonly owners: Owners;
}

/** What of a question says whom or what it is about. */
interface About {
  readonly params: Readonly<Record<string, unknown>>;
  readonly query: Readonly<Record<string, unknown>>;
}

/** How a route says that there is no such thing. */
function missing({ refusals }: Route): Refusal {
  type Missing = Extract<RefusalCode, 'no-such-student' | 'no-such-take' | 'no-such-hour' | 'no-such-link'>;
  const code = refusals.find((each): each is Missing => each.startsWith('no-such-'));
  return refusal(code ?? 'no-such-student', {});
}

/** The place of a path that names what a route is about. */
const PLACE: Readonly<Partial<Record<Whose, string>>> = { demonstration: 'demonstration' };

/** The kinds of things that whoever made them, and a head, change. */
type Made = Extract<Whose, 'lesson' | 'book' | 'demonstration'>;

/** Why a teacher may not change what somebody made; null where they may, or there is no such thing. */
async function notTheirs(
  kind: Made,
  id: string,
  teacher: Teacher,
  { owners }: GuardParts,
): Promise<Refusal | null> {
  if (teacher.role === 'head') return null;
  const owner = await owners[kind](id);
  if (owner === null || owner === teacher.id) return null;
  return refusal('not-yours', {});
}

/** Why a teacher is not answered; null where they are. */
export async function refusedTo(
  route: Route,
  { params, query }: About,
  teacher: Teacher | null,
  parts: GuardParts,
): Promise<Refusal | null> {
  const { whose } = route;
  if (whose === 'anybody' || whose === 'link') return null;
  if (!teacher) return refusal('sign-in-first', {});
  const id = String(params[PLACE[whose] ?? 'id']);
  const { student } = query;
  if (typeof student === 'string' && (await parts.owners.student(student)) !== teacher.id)
    return refusal('no-such-student', {});
  switch (whose) {
    case 'school':
    case 'own':
      return null;
    case 'head':
      return teacher.role === 'head' ? null : refusal('head-only', {});
    case 'student':
      return (await parts.owners.student(id)) === teacher.id ? null : missing(route);
    case 'student-of-link':
      return (await parts.owners.link(id)) === teacher.id ? null : missing(route);
    case 'lesson':
    case 'book':
    case 'demonstration':
      return notTheirs(whose, id, teacher, parts);
    default:
      return whose satisfies never;
  }
}
