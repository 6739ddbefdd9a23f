/** What makes sheets and packs and reads files beside the servers of tests. */
import { createMakers, type Makers } from '@shedbook/server';

/** Shared by all servers of this process: loading the engraver takes a second of the processor. They end with it. */
export const sharedMakers: Makers = createMakers();
