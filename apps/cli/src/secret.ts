/** Asking for a secret on the terminal: what is typed is not shown. */
import { createInterface } from 'node:readline';
import { Writable } from 'node:stream';

/** Asks for a secret with each prompt in turn; where nobody types, the first line that comes is the only answer. */
export type AskSecret = (prompts: readonly string[]) => Promise<readonly string[]>;

/** Asks whoever runs this process. */
export const askSecret: AskSecret = async (prompts) => {
  const isTyped = process.stdin.isTTY === true;
  const silent = new Writable({ write: (_chunk, _encoding, done) => done() });
  const lines = createInterface({ input: process.stdin, output: silent, terminal: isTyped });
  const iterator = lines[Symbol.asyncIterator]();
  const answers: string[] = [];
  for (const prompt of isTyped ? prompts : prompts.slice(0, 1)) {
    if (isTyped) process.stderr.write(prompt);
    const { value, done } = await iterator.next();
    if (isTyped) process.stderr.write('\n');
    if (done) break;
    answers.push(value);
  }
  lines.close();
  return answers;
};
