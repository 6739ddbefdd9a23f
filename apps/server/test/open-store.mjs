/** For tests: opens the store of a folder when told, and makes a lesson in it. */
import { once } from 'node:events';
import { createLessonStore } from '../dist/store/lessons.js';
import { openDatabase } from '../dist/store/open.js';

process.send('ready');
await once(process, 'message');
const database = openDatabase(process.argv[2]);
await createLessonStore(database, () => new Date()).create(`title: ${process.pid}`);
await database.destroy();
process.disconnect();
