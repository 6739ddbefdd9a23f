/**
 * For tests: a server's queue in a folder, or in the database that goes with it, until it is killed: it does small work, or
 * only tells how all work is where it is to watch.
 */
import { randomUUID } from 'node:crypto';
import { appendFileSync } from 'node:fs';
import { join } from 'node:path';
import { openStore } from '../dist/store/open-store.js';
import { openFileShelf } from '../dist/work/file-shelf.js';
import { openPostgresShelf } from '../dist/work/postgres-shelf.js';
import { createWorkQueue } from '../dist/work/work-queue.js';

const [, , dataDir = '', address = '', watches = ''] = process.argv;

/** Milliseconds for which work is held: some looks, so that a killed server's is soon anybody's. */
const HELD_MS = 3000;

const shelf =
  address === ''
    ? openFileShelf(dataDir, HELD_MS)
    : openPostgresShelf(await openStore({ dataDir, address }), ['film'], HELD_MS);
const queue = createWorkQueue(shelf);
if (watches === '')
  queue.work('film', async ({ id }) => {
    appendFileSync(join(dataDir, 'begun'), `${id}\n`);
    await new Promise((resolve) => setTimeout(resolve, Math.random() * 60));
    return { at: 'done', told: randomUUID() };
  });
process.on('message', (id) => {
  if (watches !== '') queue.list().then((all) => process.send?.(all));
  else
    queue.add({ id: `${id}`, kind: 'film', of: 'first-swing' }).then(
      () => process.send?.({ added: id }),
      () => undefined,
    );
});
process.send?.('ready');
