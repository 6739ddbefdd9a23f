/** Every word of hearing oneself, takes, plan, log and care, in German. */

import { voices } from './drum-set.ts';
import { durations } from './durations.ts';
import { care } from './hearing/care.ts';
import { demonstration } from './hearing/demonstration.ts';
import { after, hearing, page as hearingPage, latency, pad } from './hearing/hearing.ts';
import { history, log, plan, progress, week } from './hearing/plan.ts';
import { takes } from './hearing/takes.ts';
import { sizes } from './sizes.ts';

/** The messages. */
export const hearingMessages = {
  voices,
  sizes,
  durations,
  ...hearingPage,
  hearing,
  after,
  latency,
  pad,
  takes,
  demonstration,
  plan,
  log,
  history,
  progress,
  week,
  care,
} as const;
