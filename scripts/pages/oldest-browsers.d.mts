/** The table of the oldest browsers, as the root's package.json has it. */
export type OldestBrowsers = Readonly<Record<'chrome' | 'edge' | 'firefox' | 'safari' | 'ios_saf', string>>;
export function oldestBrowsers(manifest?: object): OldestBrowsers;
export function buildTargets(oldest: OldestBrowsers): string[];
