/** Every word of hearing oneself, takes, plan, log and care, in German. */

import { sides, voices } from './drum-set.ts';
import { care } from './hearing/care.ts';
import { after, hearing, page as hearingPage, latency, reasons } from './hearing/hearing.ts';
import { log, plan } from './hearing/plan.ts';
import { takes } from './hearing/takes.ts';
import { sizes } from './sizes.ts';

/** The messages. */
export const hearingMessages = {
  voices,
  sizes,
  limbs: sides,
  ...hearingPage,
  hearing,
  after,
  latency,
  reasons,
  takes,
  plan,
  log,
  care,
} as const;
