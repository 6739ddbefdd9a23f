/** Passkeys between server, browser and device: what the server asks goes to the device, and its answer back. */
import type { PasskeyAnswer } from '@shedbook/routes';
import {
  type AuthenticationResponseJSON,
  type PublicKeyCredentialCreationOptionsJSON,
  type PublicKeyCredentialRequestOptionsJSON,
  type RegistrationResponseJSON,
  startAuthentication,
  startRegistration,
} from '@simplewebauthn/browser';
import { ask } from '../document/client.ts';

/** An answer as it is sent: every part of it as the device gave it. */
function sent(answer: AuthenticationResponseJSON | RegistrationResponseJSON): PasskeyAnswer {
  return { ...answer, type: 'public-key' };
}

/** Makes a passkey for whoever signed in. @throws where the device makes none, or the server refuses it */
export async function makePasskey(): Promise<void> {
  const { options } = await ask('beginPasskey', {});
  const optionsJSON = options as unknown as PublicKeyCredentialCreationOptionsJSON;
  await ask('addPasskey', { body: sent(await startRegistration({ optionsJSON })) });
}

/** Signs in with a passkey. @throws where the device gives none, or the server refuses it */
export async function signInByPasskey(): Promise<void> {
  const { options } = await ask('askPasskey', {});
  const optionsJSON = options as unknown as PublicKeyCredentialRequestOptionsJSON;
  await ask('usePasskey', { body: sent(await startAuthentication({ optionsJSON })) });
}
