/** `shedbook doctor`: whether the desk's lessons are whole, what of them can be read, and what to do. */

import type { Examination } from '@shedbook/host';
import { sizeWords } from '@shedbook/words';
import type { Speaker } from '../terminal.ts';
import type { LoadDesk } from './serve.ts';

/** What the command line asks for. */
export interface DoctorRequest {
  /** Folder that lessons are kept in. */
  readonly data?: string;
  /** Folder to save everything in that can be read. */
  readonly save?: string;
  readonly json?: boolean;
}

/** Less room than this is said, in bytes. */
const LITTLE_ROOM_BYTES = 200e6;

function lines(found: Examination, { catalogue }: Speaker): readonly string[] {
  const { doctor: said, sizes } = catalogue.words;
  const { folder, address, version, known, faults, damagedLessons, damagedRows, copies } = found;
  if (!found.exists) return [said.nothing({ folder: address ?? folder })];
  const room = { size: sizeWords(sizes, found.storeBytes), free: sizeWords(sizes, found.freeBytes) };
  // recordings that are gone are no fault of the store itself
  const isDamaged = faults.length + damagedLessons.length + damagedRows > 0;
  const isOld = version !== null && version < known;
  return [
    address === null ? said.where({ folder, ...room }) : said.inDatabase({ address, folder, ...room }),
    ...(isOld ? [said.old({ version, known })] : []),
    ...(version !== null && version > known ? [said.newer({ version, known })] : []),
    ...(version === known ? [said.readable({ lessons: found.lessons, students: found.students })] : []),
    ...faults.map((fault) => said.fault({ fault })),
    ...(damagedLessons.length > 0
      ? [
          said.damagedLessons({
            n: damagedLessons.length,
            titles: damagedLessons.map(({ id, title }) => title ?? id),
          }),
        ]
      : []),
    ...(found.takesIn === null ? [] : [said.inBucket({ address: found.takesIn })]),
    ...(found.lostTakes > 0 ? [said.lostTakes({ n: found.lostTakes })] : []),
    ...(damagedRows > 0 ? [said.damagedRows({ n: damagedRows })] : []),
    ...copies.map((file) => said.copy({ file })),
    ...(found.freeBytes < LITTLE_ROOM_BYTES ? [said.littleRoom] : []),
    ...(found.isSound ? [said.sound] : []),
    ...(isDamaged ? [address === null ? said.whatToDo({ folder }) : said.whatToDoInDatabase] : []),
  ];
}

/** Looks at the store, and saves what can be read where that is asked for. @returns 0 where all is well, else 1 */
export async function doctor(request: DoctorRequest, terminal: Speaker, loadDesk: LoadDesk): Promise<number> {
  const { examineStore, saveReadable } = await loadDesk();
  const found = await examineStore(request.data);
  const { save } = request;
  const saved = save !== undefined && found.exists ? await saveReadable(request.data, save) : null;
  if (request.json) terminal.say(JSON.stringify({ ...found, ...(saved ? { saved } : {}) }, null, 2));
  else {
    for (const line of lines(found, terminal)) terminal.say(line);
    if (saved) terminal.say(terminal.catalogue.words.doctor.saved({ folder: save ?? '', ...saved }));
  }
  return found.isSound ? 0 : 1;
}
