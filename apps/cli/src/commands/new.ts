/** `shedbook new`: a lesson that starts from one of our grooves. */
import { nearest, STARTER_NAMES, starterText } from '@shedbook/core';
import { oneOf, refused } from '../options.ts';
import type { Speaker } from '../terminal.ts';
import { writeNewTextFile } from '../text-file.ts';

/** What the command line asks for. */
export interface NewRequest {
  /** Name of the groove; which there are is said when left out. */
  readonly groove?: string;
  readonly title?: string;
  readonly out?: string;
}

/** Writes a lesson from a groove, or says which grooves there are. @returns the exit status */
export async function newLesson(request: NewRequest, terminal: Speaker): Promise<number> {
  const { fresh } = terminal.catalogue.words;
  const { groove, out } = request;
  if (groove === undefined) {
    const longest = Math.max(...STARTER_NAMES.map(({ length }) => length));
    const lines = STARTER_NAMES.map((name) => `  ${name.padEnd(longest)}  ${fresh.starters[name]}`);
    terminal.say([fresh.list, ...lines].join('\n'));
    return 0;
  }
  const name = STARTER_NAMES.find((each) => each === groove.toLowerCase());
  if (!name) throw refused('groove', `"${groove}"`, oneOf(STARTER_NAMES), nearest(groove, STARTER_NAMES));
  const text = starterText(name, request.title ?? fresh.starters[name]);
  if (out === undefined) terminal.say(text.trimEnd());
  else {
    await writeNewTextFile(out, text);
    terminal.say(fresh.written({ file: out, groove: fresh.starters[name] }));
  }
  return 0;
}
