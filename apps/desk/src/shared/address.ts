/** Addresses of the desk: `/` the desk, `/students` the students, `/lesson/ID/VIEW` a lesson. */

/** What a lesson can be looked at as, in the order of the index tabs. */
export const VIEWS = ['page', 'groove', 'compose', 'text', 'print', 'room'] as const;

/** One of the views. */
export type View = (typeof VIEWS)[number];

/** Where somebody is. */
export type Route =
  | { readonly at: 'desk' }
  | { readonly at: 'students' }
  | { readonly at: 'lesson'; readonly id: string; readonly view: View };

/** Reads an address; anything unknown is the desk. */
export function readRoute(path: string): Route {
  if (/^\/students\/?$/.test(path)) return { at: 'students' };
  const match = /^\/lesson\/([\w-]+)(?:\/(\w+))?\/?$/.exec(path);
  if (!match) return { at: 'desk' };
  const view = VIEWS.find((each) => each === match[2]) ?? 'page';
  return { at: 'lesson', id: match[1] as string, view };
}

/** The address of a route. */
export function pathOf(route: Route): string {
  if (route.at === 'desk') return '/';
  if (route.at === 'students') return '/students';
  return route.view === 'page' ? `/lesson/${route.id}` : `/lesson/${route.id}/${route.view}`;
}
