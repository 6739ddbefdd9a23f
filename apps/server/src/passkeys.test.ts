import { expect, it } from 'vitest';
import { IN_A_FILE } from '../test/stores.ts';
import { passkeysSuite } from '../test/suites/passkeys.suite.ts';
import { send, startTestServer, temporaryFolder } from '../test/temporary.ts';
import { passkeyPlace } from './http/passkey-place.ts';
import { setPassphrase } from './start.ts';

passkeysSuite(IN_A_FILE);

it('[SE7408] passkeys hold for a domain that is reached encrypted, or for localhost, and for nothing else', async () => {
  const at = (address: string | null) => passkeyPlace({ host: '127.0.0.1', address });
  // standard: W3C, Web Authentication, Level 2, section 5.1.3: a number is no domain; Secure Contexts: localhost is safe
  expect(at('https://lessons.example:8443')).toEqual({
    rpID: 'lessons.example',
    origin: 'https://lessons.example:8443',
  });
  expect(at('http://localhost:4747')).toEqual({ rpID: 'localhost', origin: 'http://localhost:4747' });
  for (const none of [null, 'http://lessons.example', 'https://192.0.2.7', 'https://[2001:db8::7]'])
    expect([none, at(none)]).toEqual([none, null]);
  const dataDir = temporaryFolder();
  await setPassphrase('brushes on a coated head', dataDir);
  const plain = await startTestServer({ dataDir, address: 'http://lessons.example' });
  expect((await send(plain, 'POST', '/api/session/question')).body).toMatchObject({
    code: 'no-passkeys-here',
  });
  expect((await send(plain, 'GET', '/api/session')).body).toEqual({ state: 'out' });
  await plain.close();
  const safe = await startTestServer({ dataDir, address: 'https://lessons.example' });
  expect((await send(safe, 'GET', '/api/session')).body).toEqual({ state: 'out', hasPasskeys: false });
  const { body } = await send(safe, 'POST', '/api/session/question');
  expect(body).toMatchObject({ options: { rpId: 'lessons.example', userVerification: 'required' } });
  const unknown = { id: 'nobodys', rawId: 'nobodys', type: 'public-key', response: {} };
  expect(await send(safe, 'POST', '/api/session/passkey', unknown)).toMatchObject({ status: 403 });
});
