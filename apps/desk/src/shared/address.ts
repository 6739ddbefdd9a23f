/** Addresses of the desk: `/` the desk, `/students` the students, `/bin` the bin, `/books` the books, `/sound` whether a device sounds, `/lesson/ID/VIEW` a lesson. */

/** What a lesson can be looked at as, in the order of the index tabs. */
export const VIEWS = ['page', 'groove', 'compose', 'text', 'print', 'room'] as const;

/** One of the views. */
export type View = (typeof VIEWS)[number];

/** Where somebody is. */
export type Route =
  | { readonly at: 'desk' }
  | { readonly at: 'students' }
  | { readonly at: 'bin' }
  | { readonly at: 'books' }
  | { readonly at: 'sound' }
  | { readonly at: 'lesson'; readonly id: string; readonly view: View };

/** The screens that have one address, and what it is. */
const PATHS: Readonly<Record<Exclude<Route['at'], 'lesson'>, string>> = {
  desk: '/',
  students: '/students',
  bin: '/bin',
  books: '/books',
  sound: '/sound',
};

/** Reads an address; anything unknown is the desk. */
export function readRoute(path: string): Route {
  const screens = Object.keys(PATHS) as readonly (keyof typeof PATHS)[];
  const at = screens.find((each) => PATHS[each] === path || `${PATHS[each]}/` === path);
  if (at) return { at };
  const match = /^\/lesson\/([\w-]+)(?:\/(\w+))?\/?$/.exec(path);
  if (!match) return { at: 'desk' };
  const view = VIEWS.find((each) => each === match[2]) ?? 'page';
  return { at: 'lesson', id: match[1] as string, view };
}

/** The address of a route. */
export function pathOf(route: Route): string {
  if (route.at !== 'lesson') return PATHS[route.at];
  return route.view === 'page' ? `/lesson/${route.id}` : `/lesson/${route.id}/${route.view}`;
}
