/** For tests: opens the store of a folder, or of the database that goes with it, when told, and makes a lesson in it. */
import { once } from 'node:events';
import { createLessonStore } from '../dist/store/lessons.js';
import { openStore } from '../dist/store/open-store.js';

const [, , dataDir, address = null] = process.argv;
process.send('ready');
await once(process, 'message');
const database = await openStore({ dataDir, address });
await createLessonStore(database, () => new Date()).create(`title: ${process.pid}`);
await database.destroy();
process.disconnect();
