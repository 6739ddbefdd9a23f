/** What pages and the service worker tell each other; types alone, since a worker's script stands by itself. */

/** What a page asks of a worker. */
export type ToWorker = 'take over' | 'take charge' | 'say whether you wait';

/** What a worker tells a page: its version has taken the place of the page's, or waits to. */
export type ToPage = 'taken over' | 'waits';

/** What a page tells the worker of the private link that opened it: the student's lessons in their order. */
export interface ToLinkWorker {
  readonly lessons: readonly string[];
}
