/** `node dist/main.js [--port N] [--host H] [--data DIR] [--demo DIR]`: the server on its own. */
import { parseArgs } from 'node:util';
import { CLI } from '@shedbook/words';
import { openBrowser } from './open-browser.ts';
import { startServer } from './start.ts';

const { values } = parseArgs({
  options: {
    port: { type: 'string' },
    host: { type: 'string' },
    data: { type: 'string' },
    demo: { type: 'string' },
    'no-open': { type: 'boolean' },
  },
});

try {
  const server = await startServer({
    warmsUp: true,
    ...(values.port === undefined ? {} : { port: Number(values.port) }),
    ...(values.host === undefined ? {} : { host: values.host }),
    ...(values.data === undefined ? {} : { dataDir: values.data }),
    ...(values.demo === undefined ? {} : { seedLessonsDir: values.demo }),
  });
  process.stdout.write(`${CLI.en.words.serve.at({ url: server.url })}\n`);
  if (!values['no-open']) openBrowser(server.url);
} catch (error) {
  process.stderr.write(`${(error as Error).message}\n`);
  process.exit(1);
}
